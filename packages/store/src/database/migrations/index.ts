import type { Migration } from "./types.ts";
import { VERSION_1 } from "./version-1.ts";
import { VERSION_2 } from "./version-2.ts";
import { VERSION_3 } from "./version-3.ts";
import { VERSION_4 } from "./version-4.ts";
import { VERSION_5 } from "./version-5.ts";
import { VERSION_6 } from "./version-6.ts";
import { VERSION_7 } from "./version-7.ts";
import { VERSION_8 } from "./version-8.ts";
import { VERSION_9 } from "./version-9.ts";
import { VERSION_10 } from "./version-10.ts";
import { VERSION_11 } from "./version-11.ts";
import { VERSION_12 } from "./version-12.ts";

/** Every step from an empty database to today, in order. */
export const MIGRATIONS: readonly Migration[] = [
  VERSION_1,
  VERSION_2,
  VERSION_3,
  VERSION_4,
  VERSION_5,
  VERSION_6,
  VERSION_7,
  VERSION_8,
  VERSION_9,
  VERSION_10,
  VERSION_11,
  VERSION_12,
];

/** Version of the tables that this program reads and writes. */
export const STORE_VERSION = MIGRATIONS.length;
