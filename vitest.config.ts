import { defineConfig } from "vitest/config";

const slow = ["**/*.slow.test.ts"];
/** with a real browser and the built app */
const browser = ["**/*.browser.test.ts"];

export default defineConfig({
  test: {
    testTimeout: 60_000,
    projects: [
      {
        extends: true,
        test: {
          name: "fast",
          include: ["src/**/*.test.ts", "test/**/*.test.ts"],
          exclude: [...slow, ...browser, "**/node_modules/**"],
        },
      },
      {
        extends: true,
        test: {
          name: "browser",
          include: ["test/browser/**/*.browser.test.ts"],
          fileParallelism: false,
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
      {
        extends: true,
        test: {
          name: "slow",
          include: ["src/**/*.slow.test.ts", "test/**/*.slow.test.ts"],
          testTimeout: 600_000,
        },
      },
    ],
  },
});
