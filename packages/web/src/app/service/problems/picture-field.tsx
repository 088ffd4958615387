import { FileInput } from "@mantine/core";
import { pathTo } from "@pinwright/contract";
import { IconCamera } from "@tabler/icons-react";
import { useState } from "react";
import { shrunk } from "../../../floor/defects/shrink.ts";
import { useDevice } from "../../../floor/device.tsx";
import { sha256 } from "../../../floor/outbox/outbox.ts";
import { useWords } from "../../words.tsx";

/** Chooses a picture and makes it small. */
export function PictureField({
  picture,
  set,
}: {
  readonly picture: Blob | null;
  readonly set: (picture: Blob | null) => void;
}) {
  const own = useWords().serviceProblems.make;
  const [failed, setFailed] = useState(false);
  const choose = (file: File | null): void => {
    setFailed(false);
    if (file === null) set(null);
    else
      shrunk(file).then(set, () => {
        set(null);
        setFailed(true);
      });
  };
  return (
    <FileInput
      label={own.picture}
      placeholder={picture === null ? "" : own.pictureTaken}
      accept="image/*"
      clearable
      leftSection={<IconCamera size={16} aria-hidden />}
      error={failed ? own.pictureBad : null}
      onChange={choose}
    />
  );
}

/** Keeps a picture in this browser until it is sent, and answers its hash; nothing where there is none. */
export function useKeepPicture(): (picture: Blob | null) => Promise<{ readonly picture?: string }> {
  const { store } = useDevice();
  return async (picture) => {
    if (picture === null) return {};
    const hash = await sha256(picture);
    await store.keepPicture(hash, picture);
    return { picture: hash };
  };
}

/** A picture that somebody took of a problem. */
export function ProblemPicture({ hash, says }: { readonly hash: string; readonly says: string }) {
  const own = useWords().serviceProblems;
  const [isGone, setGone] = useState(false);
  if (isGone) return <span className="dim">{own.noPicture}</span>;
  const path = pathTo("picture", { sha256: hash });
  return (
    <a className="problem-picture" href={path} target="_blank" rel="noreferrer">
      <img src={path} alt={own.picture(says)} onError={() => setGone(true)} />
    </a>
  );
}
