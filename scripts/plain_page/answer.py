"""The Python of the plain page: the same question as the guide's page, the same calculators."""

from pyscript import document

from calculators.cards import BY_SLUG
from calculators.evaluate import evaluate
from calculators.outputs.data import sentence

evaluation = evaluate(BY_SLUG["boiling-point"], {}, system="us")
answer = document.querySelector("#answer")
answer.textContent = sentence(evaluation)
answer.setAttribute("state", "done")
