// Run a Python file inside Pyodide, the Python that the browser runs.
//
//   node scripts/in_pyodide.mjs [--stdlib ZIP] [--app ZIP] [--optimize] SCRIPT.py [ARGUMENTS]
//
// The repository is /repo there and the current folder. --stdlib boots from that standard
// library, --app unpacks that archive into site-packages, --optimize drops docstrings and
// asserts. The exit status is the script's.
import fs from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { loadPyodide } from "../node_modules/pyodide/pyodide.mjs";

const root = path.dirname(path.dirname(fileURLToPath(import.meta.url)));
const at = process.argv.findIndex((word) => word.endsWith(".py"));
const { values: options } = parseArgs({
  args: process.argv.slice(2, at),
  options: { stdlib: { type: "string" }, app: { type: "string" }, optimize: { type: "boolean" } },
});

const py = await loadPyodide({
  indexURL: path.join(root, "node_modules/pyodide/"),
  ...(options.stdlib && { stdLibURL: path.resolve(root, options.stdlib) }),
  args: options.optimize ? ["-OO"] : [],
  env: {
    HOME: "/tmp",
    PYTHONDONTWRITEBYTECODE: "1",
    PYTHONHASHSEED: "0", // the same bytecode every time
    SOURCE_DATE_EPOCH: "315532800",
  },
});
if (options.app) {
  const app = fs.readFileSync(path.resolve(root, options.app));
  py.unpackArchive(new Uint8Array(app), "zip", {
    extractDir: py.runPython("import site; site.getsitepackages()[0]"),
  });
}
py.FS.mkdirTree("/repo");
py.FS.mount(py.FS.filesystems.NODEFS, { root }, "/repo");
py.globals.set("words", py.toPy(process.argv.slice(at)));
const status = py.runPython(`
import os, runpy, sys, traceback
os.chdir("/repo")
sys.argv = list(words)
# The folder of the script, as ever, but not the current one: calculators is what was unpacked.
sys.path[:] = [os.path.dirname(os.path.abspath(sys.argv[0])), *filter(None, sys.path)]
status = 0
try:
    runpy.run_path(sys.argv[0], run_name="__main__")
except SystemExit as stop:
    status = stop.code
    if isinstance(status, str):
        print(status, file=sys.stderr)
        status = 1
except BaseException:
    traceback.print_exc()
    status = 1
int(status or 0)
`);
process.exit(status);
