import { Button, Modal } from "@mantine/core";
import type { Person, PersonSession } from "@pinwright/contract";
import { useCallback, useEffect, useState } from "react";
import { call } from "../../api/call.ts";
import { useSession } from "../session/session.tsx";
import { useSpeech } from "../words.tsx";
import { isHere } from "./here.ts";
import { accountRefusal } from "./refusal.ts";

/** Where somebody is signed in, and what ends that: a tablet that is lost, or somebody who is gone. */
export function PersonSessions({ person, close }: { readonly person: Person; readonly close: () => void }) {
  const { words: all, language } = useSpeech();
  const words = all.people.sessions;
  const { status } = useSession();
  const [sessions, setSessions] = useState<readonly PersonSession[] | null>(null);
  const [said, setSaid] = useState("");
  const [wrong, setWrong] = useState("");
  const { id } = person;
  const load = useCallback(async () => setSessions(await call("sessions", { parts: { person: id } })), [id]);
  const tried = useCallback(
    async (work: () => Promise<unknown>) => {
      setWrong("");
      setSaid("");
      try {
        await work();
        return true;
      } catch (error) {
        setWrong(accountRefusal(all, error));
        return false;
      }
    },
    [all],
  );
  useEffect(() => void tried(load), [load, tried]);
  const ended = async (end: () => Promise<unknown>) => {
    if (await tried(end)) setSaid(words.ended);
    // Another may have ended since the list was read.
    await load().catch(() => undefined);
  };
  const { token } = status;
  const when = new Intl.DateTimeFormat(language, {
    dateStyle: "medium",
    timeStyle: "short",
    hourCycle: "h23",
  });
  const others = (sessions ?? []).filter(({ isOwn }) => !isOwn);
  return (
    <Modal
      opened
      size="lg"
      onClose={close}
      title={words.of(person.name)}
      closeButtonProps={{ "aria-label": all.common.close }}
    >
      <p className="dim">{words.about}</p>
      {sessions?.length === 0 && <p>{words.none}</p>}
      {sessions !== null && sessions.length > 0 && (
        <div className="people-scroll">
          <table className="people-table">
            <thead>
              <tr>
                <th scope="col">{words.columns.kind}</th>
                <th scope="col">{words.columns.from}</th>
                <th scope="col">{words.columns.since}</th>
                <th scope="col">{words.columns.until}</th>
                <th scope="col">
                  <span className="visually-hidden">{words.end}</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {sessions.map((session) => {
                const since = when.format(new Date(session.startedAt));
                return (
                  <tr key={session.id}>
                    <td>{words.kinds[session.kind]}</td>
                    <td>{isHere(session.from) ? all.people.audit.here : session.from}</td>
                    <td>{since}</td>
                    <td>{when.format(new Date(session.endsAt))}</td>
                    <td>
                      {session.isOwn ? (
                        words.own
                      ) : (
                        <Button
                          variant="default"
                          size="compact-sm"
                          aria-label={words.endSince(since)}
                          onClick={() =>
                            void ended(() =>
                              call("endSession", { parts: { person: id, session: session.id }, token }),
                            )
                          }
                        >
                          {words.end}
                        </Button>
                      )}
                    </td>
                  </tr>
                );
              })}
            </tbody>
          </table>
        </div>
      )}
      {others.length > 1 && (
        <Button
          variant="default"
          onClick={() => void ended(() => call("endSessions", { parts: { person: id }, token }))}
        >
          {words.endAll}
        </Button>
      )}
      <p role="status">{said}</p>
      <p role="alert" className="error-text">
        {wrong}
      </p>
    </Modal>
  );
}
