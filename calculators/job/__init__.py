"""The job record: what a job file holds, how it is checked, printed and exported."""
