import { fail, type Issue, ok, type Result } from "#core";
import { error } from "../../issue.ts";

/** Lets so many through at once; the others wait in their order, up to a limit. */
export class Turnstile {
  readonly #atOnce: number;
  readonly #mayWait: number;
  readonly #waiting: (() => void)[] = [];
  #inside = 0;

  constructor(atOnce: number, mayWait: number) {
    this.#atOnce = atOnce;
    this.#mayWait = mayWait;
  }

  /** Errors: access.busy. */
  async through<T>(work: () => Promise<T>): Promise<Result<T, Issue>> {
    if (this.#inside >= this.#atOnce) {
      if (this.#waiting.length >= this.#mayWait) return fail(error("access.busy"));
      await new Promise<void>((resolve) => this.#waiting.push(resolve));
    } else this.#inside++;
    return ok(await work().finally(() => this.#leave()));
  }

  /** The place is handed on, so that nobody slips in between. */
  #leave(): void {
    const next = this.#waiting.shift();
    if (next === undefined) this.#inside--;
    else next();
  }
}
