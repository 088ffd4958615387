import type { Job } from "@pinwright/contract";

type JobFile = Job["files"][number];

/** Files of a job, by the harness, or the machine, whose name they begin with. */
export interface FilesOfHarness {
  /** Null for files of no harness that is known. */
  readonly harnessId: string | null;
  readonly files: readonly JobFile[];
}

/** Groups files by harness, in the order of the harnesses; what belongs to none comes last. */
export function byHarness(
  files: readonly JobFile[],
  harnessIds: readonly string[],
): readonly FilesOfHarness[] {
  // `hs.lamp` must not take the files of `hs.lamp-2`, nor `hs.a` those of a harness `hs.a.b`.
  const longestFirst = harnessIds.toSorted((a, b) => b.length - a.length);
  const groups = new Map<string | null, JobFile[]>();
  for (const file of files) {
    const id = longestFirst.find((one) => file.name.startsWith(`${one}.`)) ?? null;
    const list = groups.get(id);
    if (list === undefined) groups.set(id, [file]);
    else list.push(file);
  }
  return [...harnessIds, null].flatMap((harnessId) => {
    const own = groups.get(harnessId);
    return own === undefined ? [] : [{ harnessId, files: own }];
  });
}

/** Takes in what the server says of a job: in its place when it is known, else first. */
export function withJob(jobs: readonly Job[], job: Job): readonly Job[] {
  return jobs.some((one) => one.id === job.id)
    ? jobs.map((one) => (one.id === job.id ? job : one))
    : [job, ...jobs];
}
