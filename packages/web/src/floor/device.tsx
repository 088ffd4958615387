import type { Fact, FactBody, ProblemCode } from "@pinwright/contract";
import {
  createContext,
  type ReactNode,
  useCallback,
  useContext,
  useEffect,
  useMemo,
  useRef,
  useState,
  useSyncExternalStore,
} from "react";
import { call, Refused } from "../api/call.ts";
import { useSession } from "../app/session/session.tsx";
import { openDatabase } from "./outbox/database.ts";
import { DeviceStore } from "./outbox/device-store.ts";
import { Outbox } from "./outbox/outbox.ts";
import { OwnFacts } from "./outbox/own-facts.ts";
import { Sender, type SendState } from "./outbox/sender.ts";
import type { KeptFact } from "./outbox/store.ts";
import { useReach } from "./outbox/use-reach.ts";

/** Id of whoever works where there are no accounts yet. */
const NOBODY = "local";

/** What this device keeps and how it stands with the server. */
interface Device {
  /** Keeps facts; resolves when they outlive the page. The server gets them by itself. */
  readonly write: (bodies: readonly FactBody[]) => Promise<readonly Fact[]>;
  readonly own: OwnFacts;
  readonly store: DeviceStore;
  readonly sending: SendState;
  /** Since when nobody answers, as ms since 1970; null: the server is there. */
  readonly awaySince: number | null;
  readonly sendNow: () => void;
}

const DeviceContext = createContext<Device | null>(null);

interface Kept {
  readonly store: DeviceStore;
  readonly own: OwnFacts;
  readonly outbox: Outbox;
}

/** What the server says of a file that is no picture to it. */
const NO_PICTURE: ReadonlySet<ProblemCode> = new Set(["bad-request", "too-large", "unreadable"]);

/** Sends what is kept of these pictures. One that the server will not have is left out: its fact counts without it. */
async function sendPictures(
  store: DeviceStore,
  hashes: readonly string[],
  token: string | null,
): Promise<void> {
  for (const hash of hashes) {
    const file = await store.picture(hash);
    if (file === null) continue;
    await call("putPicture", { parts: {}, file, token }).catch((error: unknown) => {
      if (!(error instanceof Refused && NO_PICTURE.has(error.problem.code))) throw error;
    });
  }
}

const now = (): string => new Date().toISOString();

async function openKept(): Promise<Kept> {
  const store = new DeviceStore(await openDatabase());
  const own = await OwnFacts.of(store);
  return { store, own, outbox: new Outbox(own, now) };
}

/** Opens what the device keeps, and sends what waits in it for as long as the page is there. */
export function DeviceProvider({
  children,
  failed,
}: {
  readonly children: ReactNode;
  readonly failed: (why: string) => ReactNode;
}) {
  const { status, refresh } = useSession();
  const [kept, setKept] = useState<Kept | null>(null);
  const [broken, setBroken] = useState<string | null>(null);
  const [sending, setSending] = useState<SendState>({ state: "sent" });
  const token = useRef(status.token);
  token.current = status.token;
  useEffect(() => {
    openKept().then(setKept, (error: unknown) => setBroken(String(error)));
  }, []);
  const sender = useMemo(
    () =>
      kept === null
        ? null
        : new Sender(kept.own, {
            send: (facts) =>
              call("sendFacts", { parts: {}, body: { facts: [...facts] }, token: token.current }),
            sendPictures: (hashes) => sendPictures(kept.store, hashes, token.current),
            heads: () => call("streams", { parts: {} }),
            now,
            later: (ms, work) => {
              const timer = setTimeout(work, ms);
              return () => clearTimeout(timer);
            },
            told: setSending,
          }),
    [kept],
  );
  const person = status.person?.id ?? NOBODY;
  const isIn = status.person !== null || !status.accounts;
  // biome-ignore lint/correctness/useExhaustiveDependencies: another token is another session, which may send again
  useEffect(() => {
    if (sender === null || !isIn) return;
    const again = (): void => {
      sender.compareAgain();
      void sender.send();
    };
    again();
    addEventListener("online", again);
    return () => removeEventListener("online", again);
  }, [sender, isIn, status.token]);
  useEffect(() => {
    if (sending.state === "signed-out") void refresh();
  }, [sending, refresh]);
  const write = useCallback(
    async (bodies: readonly FactBody[]) => {
      if (kept === null) throw new Error("The device's memory is not open.");
      const facts = await kept.outbox.write(bodies, person);
      void sender?.send();
      return facts;
    },
    [kept, sender, person],
  );
  const sendNow = useCallback(() => void sender?.send(), [sender]);
  const awaySince = useReach(sendNow);
  const device = useMemo(
    () => (kept === null ? null : { write, own: kept.own, store: kept.store, sending, awaySince, sendNow }),
    [kept, write, sending, awaySince, sendNow],
  );
  if (broken !== null) return failed(broken);
  return device === null ? null : <DeviceContext value={device}>{children}</DeviceContext>;
}

export function useDevice(): Device {
  const device = useContext(DeviceContext);
  if (device === null) throw new Error("useDevice outside of a DeviceProvider");
  return device;
}

/** Everything that this device wrote and still keeps. */
export function useOwnFacts(): readonly KeptFact[] {
  const { own } = useDevice();
  return useSyncExternalStore(own.subscribe, () => own.facts);
}
