import { Button } from "@mantine/core";
import type { Person } from "@pinwright/contract";
import { useCallback, useEffect, useState } from "react";
import { Link } from "wouter";
import { call } from "../../api/call.ts";
import { useMay, useSession } from "../session/session.tsx";
import { useWords } from "../words.tsx";
import { Connect } from "./connect.tsx";
import { NewPersonForm } from "./new-person.tsx";
import { PersonRow } from "./person-row.tsx";
import "./people.css";

/** Everyone with an account, how other devices connect, and the back-up. */
export default function PeoplePage() {
  const words = useWords().people;
  const { status } = useSession();
  const isOwner = useMay("owner");
  if (!isOwner) return <p className="page">{words.ownerOnly}</p>;
  return (
    <div className="people">
      <h2>{words.title}</h2>
      {status.accounts ? (
        <Accounts />
      ) : (
        <>
          <p>{words.none}</p>
          <Button component={Link} href="/set-up">
            {words.setUp}
          </Button>
        </>
      )}
      <Connect />
      <section>
        <h3>{words.backUp.title}</h3>
        <p>{words.backUp.about}</p>
        <Button component="a" variant="default" href="/api/back-up" download>
          {words.backUp.go}
        </Button>
      </section>
      <p style={{ marginTop: 24 }}>
        <Link href="/audit">{words.toAudit}</Link>
      </p>
    </div>
  );
}

function Accounts() {
  const words = useWords().people;
  const [people, setPeople] = useState<readonly Person[]>([]);
  const [said, setSaid] = useState("");
  const load = useCallback(() => call("people", { parts: {} }).then(setPeople, () => undefined), []);
  useEffect(() => void load(), [load]);
  const happened = (text: string) => {
    setSaid(text);
    void load();
  };
  return (
    <>
      <div className="people-scroll">
        <table className="people-table">
          <thead>
            <tr>
              <th scope="col">{words.columns.name}</th>
              <th scope="col">{words.columns.role}</th>
              <th scope="col">{words.columns.signIn}</th>
              <th scope="col">{words.columns.active}</th>
              <th scope="col">
                <span className="visually-hidden">{words.columns.actions}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {people.map((person) => (
              <PersonRow key={person.id} person={person} happened={happened} />
            ))}
          </tbody>
        </table>
      </div>
      <p role="status">{said}</p>
      <NewPersonForm happened={happened} />
    </>
  );
}
