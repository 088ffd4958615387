import {
  IconAlertTriangle,
  IconCalendarTime,
  IconClipboardCheck,
  IconCpu,
  IconGitCompare,
  IconHistory,
  IconLayout2,
  IconPackages,
  IconPlug,
  IconPrinter,
  IconRectangle,
  IconSitemap,
  IconStairs,
  IconStethoscope,
  IconTable,
  IconTool,
} from "@tabler/icons-react";
import { type ComponentType, lazy } from "react";

/** A section of the app, in the order of the rail. */
interface BookSection {
  /** Part of the address, and name of its words. */
  readonly path:
    | "layout"
    | "wiring"
    | "harnesses"
    | "boards"
    | "screws"
    | "panels"
    | "steps"
    | "parts"
    | "runs"
    | "bench"
    | "findings"
    | "tables"
    | "sheets"
    | "history"
    | "revisions"
    | "service";
  readonly group: "design" | "make" | "keep";
  readonly Icon: ComponentType<{ readonly size?: number }>;
  readonly Page: ComponentType;
}

/** Sections of an open book. Each loads when it is entered. */
export const BOOK_SECTIONS: readonly BookSection[] = [
  {
    path: "layout",
    group: "design",
    Icon: IconLayout2,
    Page: lazy(() => import("./layout/layout-page.tsx")),
  },
  {
    path: "wiring",
    group: "design",
    Icon: IconSitemap,
    Page: lazy(() => import("./wiring/wiring-page.tsx")),
  },
  {
    path: "harnesses",
    group: "design",
    Icon: IconPlug,
    Page: lazy(() => import("./harnesses/harnesses-page.tsx")),
  },
  {
    path: "boards",
    group: "design",
    Icon: IconCpu,
    Page: lazy(() => import("./boards/boards-page.tsx")),
  },
  {
    path: "screws",
    group: "design",
    Icon: IconTool,
    Page: lazy(() => import("./screws/screws-page.tsx")),
  },
  {
    path: "panels",
    group: "design",
    Icon: IconRectangle,
    Page: lazy(() => import("./panels/panels-page.tsx")),
  },
  {
    path: "steps",
    group: "design",
    Icon: IconStairs,
    Page: lazy(() => import("./steps/steps-page.tsx")),
  },
  {
    path: "findings",
    group: "design",
    Icon: IconAlertTriangle,
    Page: lazy(() => import("./findings/findings-page.tsx")),
  },
  { path: "tables", group: "design", Icon: IconTable, Page: lazy(() => import("./tables/tables-page.tsx")) },
  {
    path: "parts",
    group: "make",
    Icon: IconPackages,
    Page: lazy(() => import("./parts/parts-page.tsx")),
  },
  {
    path: "runs",
    group: "make",
    Icon: IconCalendarTime,
    Page: lazy(() => import("./runs/runs-page.tsx")),
  },
  {
    path: "bench",
    group: "make",
    Icon: IconClipboardCheck,
    Page: lazy(() => import("./bench/bench-page.tsx")),
  },
  { path: "sheets", group: "make", Icon: IconPrinter, Page: lazy(() => import("./sheets/sheets-page.tsx")) },
  {
    path: "history",
    group: "keep",
    Icon: IconHistory,
    Page: lazy(() => import("./history/history-page.tsx")),
  },
  {
    path: "revisions",
    group: "keep",
    Icon: IconGitCompare,
    Page: lazy(() => import("./revisions/revisions-page.tsx")),
  },
  {
    path: "service",
    group: "keep",
    Icon: IconStethoscope,
    Page: lazy(() => import("./service/service-page.tsx")),
  },
];
