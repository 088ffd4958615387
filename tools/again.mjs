// Prints the files of tests that failed, when there are few: two browsers, two servers and their threads on two cores can
// keep a page or an instrument waiting longer than any patience, so these are tried again alone. What is broken fails again.
import { readFileSync } from "node:fs";
import { relative } from "node:path";

const MOST_FILES = 3;
const { testResults } = JSON.parse(readFileSync(process.argv[2], "utf8"));
const failed = testResults
  .filter(({ status }) => status === "failed")
  .map(({ name }) => relative(process.cwd(), name));
if (failed.length <= MOST_FILES) console.log(failed.join("\n"));
