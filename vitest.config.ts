import { defineConfig } from "vitest/config";

const slow = ["**/*.slow.test.ts"];

export default defineConfig({
  test: {
    testTimeout: 60_000,
    projects: [
      {
        extends: true,
        test: {
          name: "fast",
          include: ["src/**/*.test.ts", "test/**/*.test.ts"],
          exclude: [...slow, "**/node_modules/**"],
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
