import { Button, MantineProvider } from "@mantine/core";
import { lazy, type ReactNode, Suspense } from "react";
import { Link, Redirect, Route, Switch } from "wouter";
import { DeskProvider } from "./book/desk.tsx";
import { BOOK_SECTIONS } from "./sections.ts";
import { SessionProvider, useSession } from "./session/session.tsx";
import { SignIn } from "./session/sign-in.tsx";
import { Frame } from "./shell/frame.tsx";
import { StartPage } from "./start/start-page.tsx";
import { theme } from "./theme.ts";
import { useWords, WordsProvider } from "./words.tsx";

const AuditPage = lazy(() => import("./people/audit-page.tsx"));
/** Nothing stands round it: a tablet at the bench has no room for more than the step. */
const BenchPage = lazy(() => import("./screws/bench/bench-page.tsx"));
const PeoplePage = lazy(() => import("./people/people-page.tsx"));
/** A phone before a sheet of paper: nothing stands round it. */
const PrintPage = lazy(() => import("./print/print-page.tsx"));
const SetUp = lazy(() => import("./session/set-up.tsx"));

/** The whole app. */
export function App() {
  return (
    <MantineProvider theme={theme} defaultColorScheme="auto">
      <WordsProvider>
        <SessionProvider failed={(tryAgain) => <NoServer tryAgain={tryAgain} />}>
          <Pages />
        </SessionProvider>
      </WordsProvider>
    </MantineProvider>
  );
}

function Pages() {
  const { status } = useSession();
  if (status.accounts && status.person === null) return <SignIn />;
  return (
    <Switch>
      <Route path="/b/:book/*?">
        {({ book, "*": rest }) => (
          <DeskProvider bookId={book}>
            {rest?.startsWith("screws/bench/") === true ? (
              <Loading>
                <BenchPage />
              </Loading>
            ) : (
              <Frame bookId={book}>
                <Section section={rest?.split("/")[0] || undefined} bookId={book} />
              </Frame>
            )}
          </DeskProvider>
        )}
      </Route>
      <Route path="/print">
        <Loading>
          <PrintPage />
        </Loading>
      </Route>
      <Route>
        <Frame bookId={null}>
          <Loading>
            <Switch>
              <Route path="/">
                <StartPage />
              </Route>
              <Route path="/set-up">
                <SetUp />
              </Route>
              <Route path="/people">
                <PeoplePage />
              </Route>
              <Route path="/audit">
                <AuditPage />
              </Route>
              <Route>
                <NotFound />
              </Route>
            </Switch>
          </Loading>
        </Frame>
      </Route>
    </Switch>
  );
}

function Section({ section, bookId }: { readonly section: string | undefined; readonly bookId: string }) {
  const found = BOOK_SECTIONS.find((one) => one.path === section);
  if (section === undefined) return <Redirect to={`/b/${bookId}/${BOOK_SECTIONS[0]?.path ?? ""}`} replace />;
  if (found === undefined) return <NotFound />;
  return (
    <Loading>
      <found.Page />
    </Loading>
  );
}

function Loading({ children }: { readonly children: ReactNode }) {
  const words = useWords();
  return <Suspense fallback={<p className="page dim">{words.common.loading}</p>}>{children}</Suspense>;
}

function NotFound() {
  const words = useWords();
  return (
    <div className="page">
      <p>{words.shell.notFound}</p>
      <Link href="/">{words.shell.toBooks}</Link>
    </div>
  );
}

function NoServer({ tryAgain }: { readonly tryAgain: () => void }) {
  const words = useWords();
  return (
    <main className="page">
      <p>{words.shell.noServer}</p>
      <Button onClick={tryAgain}>{words.common.retry}</Button>
    </main>
  );
}
