// AirColumn from Node: one process of ColumnTool that answers many questions. Nothing but Node itself.

import { spawn } from "node:child_process";
import { createInterface } from "node:readline";

/** A question without an answer. `code` is for programs, the message for people. */
export class NoAnswer extends Error {
  constructor(error) {
    super(error.message);
    this.code = error.code;
    this.document = error.document;
    this.place = error.place;
  }
}

/** `await engine.ask("air", { temperature: "20 °C" })`, as often as you like before the first is answered. */
export class Engine {
  #process;
  #waiting = new Map();
  #lastId = 0;
  #ended;

  /** @param command The program and its first arguments, such as ["ColumnTool"]. */
  constructor([program, ...first], { jobs } = {}) {
    const options = ["lines", ...(jobs ? ["--jobs", String(jobs)] : [])];
    this.#process = spawn(program, [...first, ...options], { stdio: ["pipe", "pipe", "inherit"] });
    this.#ended = new Promise((end) => this.#process.on("close", end));
    // Answers come in any order: the id says whose each is.
    createInterface({ input: this.#process.stdout }).on("line", (line) => {
      const reply = JSON.parse(line);
      const { answer, fail } = this.#waiting.get(reply.id);
      this.#waiting.delete(reply.id);
      if (reply.error) fail(new NoAnswer(reply.error));
      else answer(reply.answer);
    });
    this.#ended.then(() => {
      for (const { fail } of this.#waiting.values()) fail(new Error("ColumnTool ended before it answered."));
    });
  }

  /** Asks; the answer, an object, comes with the promise, or NoAnswer. `promise.id` is for `cancel`. */
  ask(verb, question = {}) {
    const id = ++this.#lastId;
    const promise = new Promise((answer, fail) => this.#waiting.set(id, { answer, fail }));
    this.#process.stdin.write(JSON.stringify({ id, verb, ...question }) + "\n");
    return Object.assign(promise, { id });
  }

  /** Takes a question back: it ends as NoAnswer with the code "cancelled", unless it was answered before. */
  cancel(promise) {
    return this.ask("cancel", { question: promise.id });
  }

  /** Waits for what was asked, and ends the process. */
  async close() {
    this.#process.stdin.end();
    await this.#ended;
  }
}
