import { Autocomplete, Button } from "@mantine/core";
import type { ProblemAbout } from "@pinwright/contract";
import { IconX } from "@tabler/icons-react";
import { useEffect, useState } from "react";
import { useDesk } from "../../book/desk.tsx";
import { usePick, useWords } from "../../words.tsx";
import { useThingNames } from "./use-problems.ts";

/** Kinds that the search finds and no problem is about. */
const NOT_ABOUT: ReadonlySet<string> = new Set(["run", "waypoint", "crossing", "cutout", "fit"]);
const MOST = 12;

/** Chooses what a problem is about: found by any id, number or name. */
export function AboutField({
  about,
  set,
}: {
  readonly about: readonly ProblemAbout[];
  readonly set: (about: readonly ProblemAbout[]) => void;
}) {
  const { serviceProblems, shell } = useWords();
  const own = serviceProblems.make;
  const desk = useDesk();
  const pick = usePick();
  const nameOf = useThingNames(about.map(({ id }) => id));
  const [text, setText] = useState("");
  const [found, setFound] = useState<readonly { readonly value: string; readonly label: string }[]>([]);
  const [failed, setFailed] = useState("");
  useEffect(() => {
    let wanted = true;
    desk.ask("search", text).then(
      (answer) => {
        if (!wanted) return;
        const options = answer.filter(({ kind }) => !NOT_ABOUT.has(kind)).slice(0, MOST);
        const unique = new Map(options.map((one) => [one.id, one]));
        setFound(
          [...unique.values()].map((one) => ({
            value: one.id,
            label: `${one.id} · ${shell.kinds[one.kind]} · ${pick(one.label, one.labelZh)}`,
          })),
        );
      },
      () => undefined,
    );
    return () => {
      wanted = false;
    };
  }, [desk, text, pick, shell]);
  const add = (one: ProblemAbout): void => {
    if (!about.some(({ id }) => id === one.id)) set([...about, one]);
    setText("");
    setFailed("");
  };
  const addId = (id: string): void => {
    desk.ask("problemSubject", id).then(
      (subject) => (subject === null ? setFailed(own.notFound(id)) : add(subject.about)),
      () => setFailed(own.notFound(id)),
    );
  };
  return (
    <fieldset className="problem-about">
      <legend>{own.about}</legend>
      <ul>
        {about.map((one) => (
          <li key={one.id}>
            <span>
              <b>{one.kind === "machine" ? own.aboutWhole : nameOf(one.id)}</b>{" "}
              <small className="dim">
                {serviceProblems.kinds[one.kind]} {one.kind === "machine" ? "" : one.id}
              </small>
            </span>
            <button
              type="button"
              className="icon-button"
              aria-label={own.aboutRemove(one.id)}
              onClick={() => set(about.filter(({ id }) => id !== one.id))}
            >
              <IconX size={16} aria-hidden />
            </button>
          </li>
        ))}
      </ul>
      <div className="problem-find">
        <Autocomplete
          aria-label={own.about}
          placeholder={own.aboutHint}
          value={text}
          data={found.map(({ value }) => value)}
          filter={({ options }) => options}
          renderOption={({ option }) =>
            found.find(({ value }) => value === option.value)?.label ?? option.value
          }
          error={failed === "" ? null : failed}
          onChange={setText}
          onOptionSubmit={addId}
          onKeyDown={(event) => {
            if (event.key !== "Enter" || text.trim() === "") return;
            event.preventDefault();
            addId(text.trim());
          }}
        />
        <Button variant="default" onClick={() => add({ kind: "machine", id: "machine" })}>
          {own.aboutWhole}
        </Button>
      </div>
      {about.length === 0 && <p className="dim">{own.aboutNone}</p>}
    </fieldset>
  );
}
