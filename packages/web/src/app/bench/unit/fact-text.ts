import type { Fact, FactBody } from "@pinwright/contract";
import { useView } from "../../book/desk.tsx";
import { useWords } from "../../words.tsx";
import { useNames } from "../names.tsx";
import { useBlockName } from "./block-text.ts";
import { useDefectWords } from "./unit-defects.tsx";
import { useRevision } from "./unit-head.tsx";

/** What a record says, in words: its kind and the rest. */
export function useFactText(): (body: FactBody) => { readonly kind: string; readonly says: string } {
  const { benchUnit: own, floor } = useWords();
  const names = useNames();
  const defects = useDefectWords();
  const revision = useRevision();
  const blockName = useBlockName();
  const tests = useView("benchTests", null);
  const says = (body: FactBody): string => {
    switch (body.kind) {
      case "begun":
        return `${names.type(body.what, body.type)}, ${own.says.begun(revision(body.revision))}`;
      case "fitted":
        return own.says.fitted(body.unit, body.into, names.place(body.place));
      case "removed":
        return own.says.removed(body.unit, body.from, names.place(body.place), body.why);
      case "lot-used":
        return own.made.lot(names.part(body.part), body.lot);
      case "step-done":
        return own.says.step(names.step(body.step), body.minutes ?? null, body.count ?? null);
      case "reading": {
        const value =
          body.value === undefined ? "" : own.readings.value(body.value, tests?.get(body.test)?.unit ?? "");
        const result = body.good ? own.readings.good : own.readings.bad;
        return [names.test(body.test), value, result, body.instrument ?? ""].filter(Boolean).join(" · ");
      }
      case "noted":
        return body.says;
      case "defect": {
        const at = body.where.point ?? body.where.item ?? body.where.panel ?? "";
        return [defects.what(body.what), at, body.says].filter(Boolean).join(" · ");
      }
      case "mended":
        return [defects.cause(body.cause), body.says].filter(Boolean).join(" · ");
      case "handed":
        return own.says.handed(names.stage(body.stage), body.site === undefined ? "" : names.site(body.site));
      case "sent":
        return own.says.sent(names.site(body.to), body.transport);
      case "arrived":
        return own.says.arrived(names.site(body.site), body.transport);
      case "alternate":
        return `${own.made.alternate(names.part(body.instead), names.part(body.part))} (${own.made.allowed[body.allowed]}): ${body.why}`;
      case "override":
        return `${blockName(body)}: ${body.why}`;
      case "released":
        return "";
      case "recall":
      case "recall-ended":
        return `${body.recall}: ${body.why}`;
      case "problem":
      case "problem-note":
        return body.says;
      case "problem-ended":
      case "correction":
        return body.why;
    }
  };
  return (body) => ({ kind: floor.outbox.facts[body.kind], says: says(body) });
}

/** A record by its place in its stream. */
export const factKey = ({ stream, seq }: Pick<Fact, "stream" | "seq">): string => `${stream} ${seq}`;
