import type { Load, LoadOptions } from "./load.ts";
import type { Post } from "./station.ts";

const AFTER_MS = 1_000;
const tenth = (value: number): number => Math.round(value * 10) / 10;

/** Quantiles of times, ms, by nearest rank. */
export function spread(times: readonly number[]) {
  const sorted = times.toSorted((a, b) => a - b);
  const at = (share: number): number => tenth(sorted[Math.max(0, Math.ceil(sorted.length * share) - 1)] ?? 0);
  return { count: times.length, p50Ms: at(0.5), p95Ms: at(0.95), p99Ms: at(0.99), mostMs: at(1) };
}

/** What is measured of a load, apart for what a kill or a cut hit and what not. */
export function figuresOf({ seconds, stations, pauseMs, seed }: LoadOptions, load: Load) {
  const { posts, readMs, acknowledgedMs, errors } = load.seen;
  const ended = (end: Post["end"]): readonly Post[] => posts.filter((post) => post.end === end);
  const answered = ended("answered");
  const free = answered.filter(({ heldMs }) => heldMs === 0);
  // From a kill until a second after the first answer of the server that was started again.
  const isOfKill = ({ startMs, ms }: Post): boolean =>
    load.kills.some(({ atMs, answeredMs }) => startMs + ms > atMs && startMs < answeredMs + AFTER_MS);
  const ms = (list: readonly Post[]): readonly number[] => list.map((post) => post.ms);
  return {
    seconds,
    stations,
    pauseMs,
    seed,
    posts: posts.length,
    postsPerSecond: tenth(posts.length / (load.workedMs / 1000)),
    factsPerSecond: tenth(load.verdict.written / (load.workedMs / 1000)),
    /** Answered, the network's own hold-ups left out; those just after a restart are in. */
    answered: spread(ms(free)),
    /** Of these, those that no kill and no start was near. */
    answeredAwayFromKills: spread(ms(free.filter((post) => !isOfKill(post)))),
    /** Answered, and held up by the network for up to two seconds. */
    heldUp: spread(ms(answered.filter(({ heldMs }) => heldMs > 0))),
    broken: ended("broken").length,
    refusedWhileStarting: ended("starting").length,
    /** From the journal to the server's answer, with all tries, outages and restarts between. */
    acknowledged: spread(acknowledgedMs),
    reads: spread(readMs),
    kills: load.kills.length,
    killToFirstAnswer: spread(load.kills.map(({ atMs, answeredMs }) => answeredMs - atMs)),
    network: load.network,
    streamsGivenUp: load.renewals,
    errors: errors.length,
    serverComplaints: load.complaints.split("\n").filter((line) => line !== "").length,
    verdict: load.verdict,
  };
}
