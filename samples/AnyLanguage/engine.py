"""AirColumn from Python: one process of ColumnTool that answers many questions. Standard library only."""

import itertools
import json
import subprocess
import threading
from concurrent.futures import Future


class NoAnswer(Exception):
    """A question without an answer. `code` is for programs, the text for people."""

    def __init__(self, error):
        super().__init__(error["message"])
        self.code = error["code"]
        self.document = error["document"]
        self.place = error["place"]


class Engine:
    """Asks with `ask`, waits with `result()` of what that returns; any thread may ask.

    with Engine(["ColumnTool"]) as engine:
        print(engine.ask("air", temperature="20 °C").result()["speedOfSound"])
    """

    def __init__(self, command, jobs=None):
        options = ["lines"] + (["--jobs", str(jobs)] if jobs else [])
        self._process = subprocess.Popen(
            [*command, *options], stdin=subprocess.PIPE, stdout=subprocess.PIPE, encoding="utf-8"
        )
        self._ids = itertools.count(1)
        self._waiting = {}
        self._gate = threading.Lock()
        self._reader = threading.Thread(target=self._read, daemon=True)
        self._reader.start()

    def ask(self, verb, **question):
        """Asks; the answer, a dictionary, or NoAnswer comes with the result of the future. `future.id` is for `cancel`."""
        future = Future()
        with self._gate:
            future.id = next(self._ids)
            self._waiting[future.id] = future
            line = json.dumps({"id": future.id, "verb": verb, **question})
            self._process.stdin.write(line + "\n")
            self._process.stdin.flush()
        return future

    def cancel(self, future):
        """Takes a question back: it ends as NoAnswer with the code "cancelled", unless it was answered before."""
        return self.ask("cancel", question=future.id)

    def close(self):
        """Waits for what was asked, and ends the process."""
        with self._gate:
            self._process.stdin.close()
        self._reader.join()
        self._process.wait()

    def __enter__(self):
        return self

    def __exit__(self, *problem):
        self.close()

    # Answers come in any order: the id says whose each is.
    def _read(self):
        for line in self._process.stdout:
            reply = json.loads(line)
            future = self._waiting.pop(reply["id"])
            if "error" in reply:
                future.set_exception(NoAnswer(reply["error"]))
            else:
                future.set_result(reply["answer"])
        for future in self._waiting.values():
            future.set_exception(EOFError("ColumnTool ended before it answered."))
