import { Button, NativeSelect, TextInput } from "@mantine/core";
import { type KeptProblem, PROBLEM_SOURCES, PROBLEM_STATES, PROBLEM_SUBJECTS } from "@pinwright/contract";
import { Link, useSearchParams } from "wouter";
import { useWhen } from "../../bench/names.tsx";
import { useDesk } from "../../book/desk.tsx";
import { DataTable } from "../../harnesses/data-table.tsx";
import { useWords } from "../../words.tsx";
import { newProblemAddress, problemAddress } from "../address.ts";
import { chosenProblems, filterOf, lastAt } from "./chosen-problems.ts";
import { StateText } from "./state-text.tsx";
import { useThingNames } from "./use-problems.ts";

const FIRST = 50;

/** Every problem of the book, open ones first. */
export function ProblemList({ problems }: { readonly problems: readonly KeptProblem[] }) {
  const own = useWords().serviceProblems;
  const { bookId } = useDesk();
  const [params, setParams] = useSearchParams();
  const filter = filterOf(params);
  const shown = chosenProblems(problems, filter);
  const count = (state: KeptProblem["state"]): number => shown.filter((one) => one.state === state).length;
  const put = (name: string, value: string): void =>
    setParams(
      (before) => {
        const next = new URLSearchParams(before);
        if (value === "") next.delete(name);
        else next.set(name, value);
        return next;
      },
      { replace: true },
    );
  const select = <T extends string>(
    label: string,
    name: string,
    value: string,
    all: readonly T[],
    words: Readonly<Record<T, string>>,
  ) => (
    <NativeSelect
      label={label}
      value={value}
      data={[
        { value: "", label: own.filter.any },
        ...all.map((one) => ({ value: one as string, label: words[one] })),
      ]}
      onChange={(event) => put(name, event.currentTarget.value)}
    />
  );
  return (
    <>
      <div className="problem-head">
        <h2>{own.title}</h2>
        <Button component={Link} href={newProblemAddress(bookId)}>
          {own.make.button}
        </Button>
      </div>
      <p className="dim">{own.about}</p>
      {problems.length === 0 ? (
        <p>
          {own.empty} {own.emptyHow}
        </p>
      ) : (
        <>
          <search className="bench-filters">
            {select(own.filter.state, "state", filter.state, PROBLEM_STATES, own.states)}
            {select(own.filter.from, "from", filter.from, PROBLEM_SOURCES, own.from)}
            {select(own.filter.about, "kind", filter.about, PROBLEM_SUBJECTS, own.kinds)}
            <TextInput
              label={own.filter.text}
              value={filter.text}
              onChange={(event) => put("text", event.currentTarget.value)}
            />
          </search>
          <p role="status">
            {shown.length === 0 ? own.none : own.counts(count("open"), count("decided"), count("ended"))}
          </p>
          {shown.length > 0 && <Table problems={shown} />}
        </>
      )}
    </>
  );
}

function Table({ problems }: { readonly problems: readonly KeptProblem[] }) {
  const own = useWords().serviceProblems;
  const { bookId } = useDesk();
  const when = useWhen();
  const nameOf = useThingNames(problems.flatMap(({ about }) => about.map(({ id }) => id)));
  const aboutText = ({ about }: KeptProblem): string =>
    about.map(({ kind, id }) => (kind === "machine" ? own.kinds.machine : nameOf(id))).join(", ");
  return (
    <DataTable
      caption={own.title}
      rows={problems}
      rowKey={({ problem }) => problem}
      first={FIRST}
      columns={[
        {
          key: "says",
          header: own.columns.says,
          value: ({ says }) => says,
          cell: ({ problem, says, unit }) => (
            <>
              <Link href={problemAddress(bookId, problem)}>{says}</Link>
              {unit !== null && <small className="dim quality-under">{own.unit(unit)}</small>}
            </>
          ),
        },
        { key: "about", header: own.columns.about, value: aboutText },
        {
          key: "state",
          header: own.columns.state,
          value: ({ state }) => own.states[state],
          cell: (problem) => <StateText problem={problem} />,
        },
        { key: "seen", header: own.columns.seen, value: ({ seen }) => seen + 1, align: "end", minor: true },
        { key: "from", header: own.columns.from, value: ({ from }) => own.from[from], minor: true },
        {
          key: "last",
          header: own.columns.last,
          value: lastAt,
          cell: (problem) => when(lastAt(problem)),
          minor: true,
        },
      ]}
    />
  );
}
