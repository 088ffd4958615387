import type { Accounts } from "../accounts/accounts.ts";
import type { Sessions } from "../accounts/sessions.ts";
import type { Files } from "../books/files.ts";
import type { Shelf } from "../books/shelf.ts";
import type { ServerDeps } from "../deps.ts";
import type { SheetJobs } from "../jobs/sheet-jobs.ts";
import type { Announcer } from "../live/announcer.ts";
import type { Hub } from "../live/hub.ts";
import type { Standing } from "../records/standing.ts";
import type { ReleaseJobs } from "../releases/release-jobs.ts";
import type { ServiceBooks } from "../service-book/service-books.ts";
import type { GateFacts } from "../units/gate-facts.ts";
import type { Gates } from "../units/gates.ts";
import type { Audit } from "./audit.ts";

/** What handlers work with. */
export interface ServerParts {
  readonly deps: ServerDeps;
  readonly accounts: Accounts;
  readonly sessions: Sessions;
  readonly shelf: Shelf;
  readonly hub: Hub;
  readonly announcer: Announcer;
  readonly files: Files;
  readonly jobs: SheetJobs;
  readonly releaseJobs: ReleaseJobs;
  readonly serviceBooks: ServiceBooks;
  readonly audit: Audit;
  readonly standing: Standing;
  readonly gateFacts: GateFacts;
  readonly gates: Gates;
  /** Token of whoever is at this computer while there are no accounts. */
  readonly localToken: string;
}
