// Prints the closing line of a test run: how many tests passed, failed and were skipped.
import { readFileSync } from "node:fs";

const report = JSON.parse(readFileSync(process.argv[2], "utf8"));
const skipped = report.numPendingTests + report.numTodoTests;
console.log(
  `${report.numPassedTests} passed, ${report.numFailedTests} failed${skipped > 0 ? `, ${skipped} skipped` : ""}`,
);
if (report.numPassedTests === 0) process.exitCode = 1;
