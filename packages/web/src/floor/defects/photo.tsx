import { pathTo } from "@pinwright/contract";
import { IconCamera } from "@tabler/icons-react";
import { useEffect, useState } from "react";
import { useWords } from "../../app/words.tsx";
import { useDevice } from "../device.tsx";
import { shrunk } from "./shrink.ts";

/** Takes a photo by the camera of the tablet, or from a file, and makes it small. */
export function TakePhoto({
  taken,
  setPhoto,
}: {
  readonly taken: boolean;
  readonly setPhoto: (photo: Blob) => void;
}) {
  const own = useWords().floor.defect;
  const [failed, setFailed] = useState(false);
  const take = async (file: File): Promise<void> => {
    try {
      setPhoto(await shrunk(file));
      setFailed(false);
    } catch {
      setFailed(true);
    }
  };
  return (
    <label className="floor-photo" title={own.photoKept} data-failed={failed ? "" : undefined}>
      <IconCamera size={26} aria-hidden />{" "}
      <span role={failed ? "alert" : undefined}>
        {failed ? own.noPhoto : taken ? own.photoAgain : own.photo}
      </span>
      <input
        type="file"
        accept="image/*"
        capture="environment"
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          // The same file can be chosen again.
          event.currentTarget.value = "";
          if (file !== undefined) void take(file);
        }}
      />
    </label>
  );
}

/** Address of a blob for as long as it is looked at. */
function useAddress(blob: Blob | null): string | null {
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    if (blob === null) return;
    const made = URL.createObjectURL(blob);
    setAddress(made);
    return () => {
      URL.revokeObjectURL(made);
      setAddress(null);
    };
  }, [blob]);
  return address;
}

export function PhotoTaken({ photo }: { readonly photo: Blob }) {
  const own = useWords().floor.defect;
  const address = useAddress(photo);
  return address === null ? null : <img className="floor-photo-shown" src={address} alt={own.photoOf} />;
}

/** The photo of a defect: this device's own, or the server's; nothing where neither is there. */
export function DefectPhoto({ hash }: { readonly hash: string }) {
  const own = useWords().floor.defect;
  const { store } = useDevice();
  const [kept, setKept] = useState<Blob | null | "asking">("asking");
  const [gone, setGone] = useState(false);
  useEffect(() => {
    store.picture(hash).then(setKept, () => setKept(null));
  }, [store, hash]);
  if (kept === "asking") return null;
  if (kept !== null) return <PhotoTaken photo={kept} />;
  if (gone) return <p className="dim">{own.photoAway}</p>;
  return (
    <img
      className="floor-photo-shown"
      src={pathTo("picture", { sha256: hash })}
      alt={own.photoOf}
      onError={() => setGone(true)}
    />
  );
}
