import { ActionIcon, Button, Menu, useComputedColorScheme, useMantineColorScheme } from "@mantine/core";
import { IconArrowBackUp, IconArrowForwardUp, IconMoon, IconSun, IconUser } from "@tabler/icons-react";
import { Link } from "wouter";
import { call } from "../../api/call.ts";
import { useDesk, useOne, useSync } from "../book/desk.tsx";
import { useUndo } from "../book/undo.ts";
import { RevisionMark } from "../revisions/revision-mark.tsx";
import { useMay, useSession } from "../session/session.tsx";
import { useTroubleOf } from "../trouble.ts";
import { usePick, useSpeech, useWords } from "../words.tsx";
import { SearchBox } from "./search-box.tsx";

/** The bar above the pages that have no book. */
export function PlainBar() {
  return (
    <header className="bar">
      <h1>Pinwright</h1>
      <span style={{ flex: 1 }} />
      <OwnButtons />
    </header>
  );
}

/** The bar above an open book: what it is, whether it is saved, search, undo. */
export function BookBar({ bookId }: { readonly bookId: string }) {
  const words = useWords();
  const pick = usePick();
  const summary = useOne("summary", null);
  const { undo, redo, said } = useUndo();
  const mayEdit = useMay("lead");
  return (
    <header className="bar">
      <h1>{summary === undefined ? bookId : pick(summary.label, summary.labelZh)}</h1>
      <RevisionMark />
      <SyncText />
      <span style={{ flex: 1 }} />
      <span className="dim" role="status">
        {said}
      </span>
      {mayEdit && (
        <>
          <ActionIcon
            variant="subtle"
            size="lg"
            aria-label={words.common.undo}
            title={`${words.common.undo} (Ctrl+Z)`}
            onClick={undo}
          >
            <IconArrowBackUp size={20} />
          </ActionIcon>
          <ActionIcon
            variant="subtle"
            size="lg"
            aria-label={words.common.redo}
            title={`${words.common.redo} (Ctrl+Y)`}
            onClick={redo}
          >
            <IconArrowForwardUp size={20} />
          </ActionIcon>
        </>
      )}
      <SearchBox bookId={bookId} />
      <OwnButtons />
    </header>
  );
}

function SyncText() {
  const words = useWords();
  const sync = useSync();
  const trouble = useTroubleOf();
  const desk = useDesk();
  if (sync.state === "failed")
    return <span className="error-text">{words.shell.sync.failed(trouble(sync.code, sync.message))}</span>;
  if (sync.state === "offline")
    return (
      <span className="amber-text" role="status">
        {words.shell.sync.offline}{" "}
        <Button size="compact-xs" variant="default" onClick={() => desk.retry()}>
          {words.common.retry}
        </Button>
      </span>
    );
  return <span className="dim">{words.shell.sync[sync.state]}</span>;
}

/** Language, light or dark, and who is signed in. */
function OwnButtons() {
  const { words, language, setLanguage } = useSpeech();
  const { setColorScheme } = useMantineColorScheme();
  const scheme = useComputedColorScheme("light");
  const { status, refresh } = useSession();
  const isOwner = useMay("owner");
  const signOut = async () => {
    await call("signOut", { parts: {}, token: status.token });
    await refresh();
  };
  return (
    <>
      <Button
        variant="subtle"
        size="compact-sm"
        aria-label={`${words.shell.language}: ${words.shell.otherLanguage}`}
        lang={language === "en" ? "zh-Hans" : "en"}
        onClick={() => setLanguage(language === "en" ? "zh" : "en")}
      >
        {words.shell.otherLanguage}
      </Button>
      <ActionIcon
        variant="subtle"
        size="lg"
        aria-label={words.shell.theme}
        title={scheme === "dark" ? words.shell.light : words.shell.dark}
        onClick={() => setColorScheme(scheme === "dark" ? "light" : "dark")}
      >
        {scheme === "dark" ? <IconSun size={20} /> : <IconMoon size={20} />}
      </ActionIcon>
      <Menu>
        <Menu.Target>
          <ActionIcon variant="subtle" size="lg" aria-label={words.shell.menu}>
            <IconUser size={20} />
          </ActionIcon>
        </Menu.Target>
        <Menu.Dropdown>
          {status.person !== null && status.accounts && <Menu.Label>{status.person.name}</Menu.Label>}
          {isOwner && status.accounts && (
            <>
              <Menu.Item component={Link} href="/people">
                {words.shell.people}
              </Menu.Item>
              <Menu.Item component={Link} href="/audit">
                {words.shell.audit}
              </Menu.Item>
            </>
          )}
          {isOwner && (
            <Menu.Item component="a" href="/api/back-up" download>
              {words.shell.backUp}
            </Menu.Item>
          )}
          {!status.accounts && (
            <Menu.Item component={Link} href="/set-up">
              {words.shell.setUp}
            </Menu.Item>
          )}
          {status.accounts && <Menu.Item onClick={() => void signOut()}>{words.shell.signOut}</Menu.Item>}
        </Menu.Dropdown>
      </Menu>
    </>
  );
}
