import { atLeast, type Role, type Status } from "@pinwright/contract";
import { createContext, type ReactNode, useCallback, useContext, useEffect, useMemo, useState } from "react";
import { call } from "../../api/call.ts";

interface Session {
  readonly status: Status;
  /** Takes in what the server said at signing in or setting up. */
  readonly setStatus: (status: Status) => void;
  /** Asks the server again. */
  readonly refresh: () => Promise<void>;
}

const SessionContext = createContext<Session | null>(null);

/** Asks who is signed in, and shows `failed` or nothing until that is known. */
export function SessionProvider({
  children,
  failed,
}: {
  readonly children: ReactNode;
  readonly failed: (tryAgain: () => void) => ReactNode;
}) {
  const [status, setStatus] = useState<Status | null>(null);
  const [broken, setBroken] = useState(false);
  const refresh = useCallback(async () => {
    try {
      setStatus(await call("status", { parts: {} }));
      setBroken(false);
    } catch {
      setBroken(true);
    }
  }, []);
  useEffect(() => void refresh(), [refresh]);
  const session = useMemo(() => (status === null ? null : { status, setStatus, refresh }), [status, refresh]);
  if (session === null) return broken ? failed(() => void refresh()) : null;
  return <SessionContext value={session}>{children}</SessionContext>;
}

export function useSession(): Session {
  const session = useContext(SessionContext);
  if (session === null) throw new Error("useSession outside of a SessionProvider");
  return session;
}

/** Whether the person who sits here may do what a role may. Before there are accounts, everyone may. */
export function useMay(role: Role): boolean {
  const { status } = useSession();
  return status.person === null ? !status.accounts : atLeast(status.person.role, role);
}
