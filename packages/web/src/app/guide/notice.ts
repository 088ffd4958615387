import { useEffect, useRef, useSyncExternalStore } from "react";
import { useLocation } from "wouter";
import { call } from "../../api/call.ts";
import { useDesk } from "../book/desk.tsx";
import { useSession } from "../session/session.tsx";
import { advance } from "./guide-state.ts";
import { changeGuide } from "./use-guide.ts";

/** Watches what the person does in the open book, and lets the guide take its steps. */
export function useNoticing(): void {
  const desk = useDesk();
  const { status } = useSession();
  const me = status.person?.id ?? "local";
  const [location] = useLocation();
  const [, , , section = "", ...more] = location.split("/");
  const rest = more.join("/");
  const changeNo = useSyncExternalStore(desk.subscribe, () => desk.changeNo);
  const seenNo = useRef<number | null>(null);
  useEffect(() => changeGuide((state) => advance(state, { kind: "place", section, rest })), [section, rest]);
  useEffect(
    () =>
      desk.onServer((event) => {
        if (event.type === "job") changeGuide((state) => advance(state, { kind: "job", job: event.job }));
      }),
    [desk],
  );
  useEffect(() => {
    const since = seenNo.current;
    if (changeNo === 0) return;
    seenNo.current = changeNo;
    // What was done before the guide was opened is no step of it.
    if (since === null || changeNo <= since) return;
    call("changesSince", { parts: { book: desk.bookId }, query: { since, limit: 50 } }).then(
      (sets) => {
        for (const set of sets)
          if (set.person === me) changeGuide((state) => advance(state, { kind: "change", section, set }));
      },
      () => undefined,
    );
  }, [desk, changeNo, me, section]);
}
