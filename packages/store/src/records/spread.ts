import type { Fact } from "@pinwright/contract";
import type { Tables } from "../database/schema.ts";
import type { TestResult } from "./passes.ts";

/** What is looked up of a fact that was not corrected. */
export class Spread {
  readonly readings: Tables["readings"][] = [];
  readonly results: TestResult[] = [];
  readonly lots: Tables["unit_lots"][] = [];
  readonly links: Tables["unit_links"][] = [];
  readonly problems: Tables["problem_facts"][] = [];
  readonly about: Tables["problem_about"][] = [];

  take({ no, fact: { body, at } }: { readonly no: number; readonly fact: Pick<Fact, "body" | "at"> }): void {
    switch (body.kind) {
      case "reading": {
        const { test, unit, value = null, good, instrument = "" } = body;
        this.readings.push({ no, test, unit, value, good: good ? 1 : 0, instrument, at });
        this.results.push({ no, test, unit, good: good ? 1 : 0, station: body.station ?? "", at });
        break;
      }
      case "lot-used":
        this.lots.push({ no, part: body.part, lot: body.lot, unit: body.unit });
        break;
      case "alternate":
        this.lots.push({ no, part: body.instead, lot: "", unit: body.unit });
        break;
      case "fitted":
        this.links.push({ no, unit: body.unit, within: body.into, place: body.place });
        break;
      case "problem": {
        const { problem, book } = body;
        this.problems.push({ no, problem, book });
        const each = new Map(body.about.map((one) => [`${one.kind} ${one.id}`, one]));
        for (const { kind, id } of each.values()) this.about.push({ no, kind, id, problem });
        break;
      }
      case "problem-note":
      case "problem-ended":
        this.problems.push({ no, problem: body.problem, book: "" });
        break;
      default:
    }
  }
}
