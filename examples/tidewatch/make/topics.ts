import type { Topic } from "./author.ts";

/** Every topic of the machine. A new topic file is added here and nowhere else. */
export const TOPICS: readonly Topic[] = [];
