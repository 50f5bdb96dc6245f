import { describe, expect, test } from "vitest";
import { progressBar } from "./progress.ts";
import type { Terminal } from "./terminal.ts";

function terminal(watched: boolean): { drawn: string[]; terminal: Terminal } {
  const drawn: string[] = [];
  const ignore = () => {};
  return {
    drawn,
    terminal: {
      print: ignore,
      tell: (text) => drawn.push(text),
      colour: false,
      signs: true,
      watched,
      overwrite: (text) => drawn.push(text),
    },
  };
}

/** 1,000 reports, a millisecond after each other. */
function work(watched: boolean): string[] {
  const { drawn, terminal: target } = terminal(watched);
  let time = 0;
  const bar = progressBar(target, "elements", () => time);
  for (time = 0; time < 1_000; time++) bar.report(time, 1_000);
  bar.finish();
  return drawn;
}

describe("the progress bar", () => {
  test("is drawn a few times a second, after a while, and taken away at the end", () => {
    const drawn = work(true);
    expect(drawn.length).toBe(7);
    expect(drawn[0]).toBe("[============                  ] 400 of 1000 elements");
    expect(drawn.at(-1)).toBe("");
  });

  test("is silent where nobody watches", () => {
    expect(work(false)).toEqual([]);
  });
});
