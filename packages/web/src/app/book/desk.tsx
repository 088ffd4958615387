import {
  createContext,
  type ReactNode,
  useCallback,
  useContext,
  useEffect,
  useState,
  useSyncExternalStore,
} from "react";
import type { Looked, RefusedEdit, SyncState, ViewName, ViewParam } from "../../worker/protocol.ts";
import { useSession } from "../session/session.tsx";
import { DeskClient, type Entries } from "./desk-client.ts";

const DeskContext = createContext<DeskClient | null>(null);

/** Opens a book for everything inside. */
export function DeskProvider({
  bookId,
  children,
}: {
  readonly bookId: string;
  readonly children: ReactNode;
}) {
  const { status, refresh } = useSession();
  const [desk, setDesk] = useState<DeskClient | null>(null);
  const { token } = status;
  const person = status.person?.id ?? "local";
  useEffect(() => {
    const opened = new DeskClient(bookId, token, person);
    setDesk(opened);
    // Someone took a right away, or ended the session.
    opened.onServer((event) => event.type === "session" && void refresh());
    return () => opened.close();
  }, [bookId, token, person, refresh]);
  return desk === null ? null : <DeskContext value={desk}>{children}</DeskContext>;
}

/** The open book. */
export function useDesk(): DeskClient {
  const desk = useContext(DeskContext);
  if (desk === null) throw new Error("useDesk outside of a DeskProvider");
  return desk;
}

/** A view of the open book, kept up to date; null until the first answer. */
export function useView<N extends ViewName>(view: N, param: ViewParam<N>): Entries<N> | null {
  const desk = useDesk();
  const key = JSON.stringify(param);
  // biome-ignore lint/correctness/useExhaustiveDependencies: `key` stands for `param`, which is often a new object
  const subscribe = useCallback(
    (listener: () => void) => desk.watch(view, param, listener),
    [desk, view, key],
  );
  return useSyncExternalStore(subscribe, () => desk.entries(view, param));
}

/** The one entry of a view that has only one. */
export const useOne = <N extends ViewName>(view: N, param: ViewParam<N>) =>
  useView(view, param)?.values().next().value;

export function useSync(): SyncState {
  const desk = useDesk();
  return useSyncExternalStore(desk.subscribe, () => desk.sync);
}

/** The release that all views show; null: the book as it is now. */
export function useLooked(): Looked {
  const desk = useDesk();
  return useSyncExternalStore(desk.subscribe, () => desk.looked);
}

export function useRefused(): readonly RefusedEdit[] {
  const desk = useDesk();
  return useSyncExternalStore(desk.subscribe, () => desk.refused);
}

/** Whether what is shown is from before a change that is still being worked on. */
export function useWorking(): boolean {
  const desk = useDesk();
  return useSyncExternalStore(desk.subscribe, () => desk.working);
}
