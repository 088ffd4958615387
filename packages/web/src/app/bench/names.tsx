import type { UnitKind } from "@pinwright/contract";
import { createContext, type ReactNode, useContext, useMemo } from "react";
import { call } from "../../api/call.ts";
import { useOne, useView } from "../book/desk.tsx";
import { usePick, useSpeech, useWords } from "../words.tsx";
import { useAsked } from "./use-asked.ts";

const STAGE_STEP = /^stage-(\d+)$/u;

/** What people call what the records name; the id itself where the book no longer has it. */
export interface Names {
  readonly type: (what: UnitKind, type: string) => string;
  readonly test: (id: string) => string;
  readonly step: (id: string) => string;
  readonly place: (id: string) => string;
  readonly part: (id: string) => string;
  readonly site: (id: string) => string;
  readonly stage: (id: string) => string;
  readonly station: (id: string) => string;
  readonly run: (id: string) => string;
  readonly option: (id: string) => string;
}

type Named = { readonly label: string; readonly labelZh: string } | undefined;

/** What every page of the section says things with. */
interface Speaking {
  readonly names: Names;
  readonly personName: (id: string) => string;
  readonly when: (at: string) => string;
}

const SpeakingContext = createContext<Speaking | null>(null);

/** Finds the names of everything once, for whatever is inside. */
export function NamesProvider({ children }: { readonly children: ReactNode }) {
  const names = useBookNames();
  const personName = usePersonNames();
  const when = useClock();
  const speaking = useMemo(() => ({ names, personName, when }), [names, personName, when]);
  return <SpeakingContext value={speaking}>{children}</SpeakingContext>;
}

function useSpeaking(): Speaking {
  const speaking = useContext(SpeakingContext);
  if (speaking === null) throw new Error("Names are asked for outside of a NamesProvider");
  return speaking;
}

export const useNames = (): Names => useSpeaking().names;

/** Names of people by the id that records have. */
export const usePeople = (): ((id: string) => string) => useSpeaking().personName;

/** Day and time as the reader's language has them. */
export const useWhen = (): ((at: string) => string) => useSpeaking().when;

function useBookNames(): Names {
  const { floor, bench } = useWords();
  const pick = usePick();
  const types = useView("floorTypes", null);
  const tests = useView("benchTests", null);
  const names = useView("benchNames", null);
  const steps = useView("stepLines", null);
  const ground = useOne("planGround", null);
  return useMemo(() => {
    const of = (named: Named, id: string): string =>
      named === undefined ? id : pick(named.label, named.labelZh) || id;
    const named =
      (kind: string) =>
      (id: string): string =>
        of(names?.get(`${kind} ${id}`), id);
    const { kit, cut, tug, stage: stageName, "lay-up": layUp } = floor.steps;
    const own: Readonly<Record<string, string>> = { kit, cut, tug, "lay-up": layUp };
    return {
      type: (what, type) => of(types?.get(what === "machine" ? what : `${what} ${type}`), type),
      test: (id) => {
        const test = tests?.get(id);
        const name = of(test, id);
        return test != null && test.harness !== null ? bench.continuityOf(name) : name;
      },
      step: (id) => {
        const step = steps?.get(id);
        if (step !== undefined) return of(step, id);
        const stage = STAGE_STEP.exec(id)?.[1];
        return stage === undefined ? (own[id] ?? id) : stageName(Number(stage));
      },
      place: named("place"),
      part: named("part"),
      site: named("site"),
      stage: named("stage"),
      station: named("station"),
      run: named("run"),
      option: (id) =>
        of(
          ground?.options.find((option) => option.id === id),
          id,
        ),
    };
  }, [pick, types, tests, names, steps, ground, floor, bench]);
}

function usePersonNames(): (id: string) => string {
  const { bench } = useWords();
  const { answer } = useAsked("people", (signal) => call("personNames", { parts: {}, signal }), "once");
  return useMemo(() => {
    const names = new Map(answer?.map(({ id, name }) => [id, name]));
    return (id) => names.get(id) ?? (id === "local" ? bench.thisComputer : id);
  }, [answer, bench]);
}

function useClock(): (at: string) => string {
  const { language } = useSpeech();
  return useMemo(() => {
    const clock = new Intl.DateTimeFormat(language === "zh" ? "zh-CN" : "en-GB", {
      year: "numeric",
      month: language === "zh" ? "2-digit" : "short",
      day: language === "zh" ? "2-digit" : "numeric",
      hour: "2-digit",
      minute: "2-digit",
    });
    return (at) => clock.format(new Date(at));
  }, [language]);
}
