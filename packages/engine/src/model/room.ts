import { fromFrame3, type Point3Mm, SharedMemory } from "@pinwright/kernel";
import type { Machine, Place } from "./machine.ts";

/** The pose in which the machine is played: the one that is marked so, else the first by id, else none. */
export function usualPoseId(machine: Machine): string | null {
  const poses = [...machine.book.tables.poses].sort((a, b) => (a.id < b.id ? -1 : 1));
  return (poses.find((pose) => pose.usual === "yes") ?? poses[0])?.id ?? null;
}

/**
 * A function that gives where a place stands in the room, in millimetres, in one pose. A panel that the pose
 * does not place gives null: nothing is known about its distance to other panels.
 */
export function roomPlaces(machine: Machine, poseId: string | null): (place: Place) => Point3Mm | null {
  const frames = new Map(
    machine.book.tables.pose_places
      .filter((row) => row.pose === poseId)
      .map((row) => [
        row.panel,
        {
          xMm: row.x_mm,
          yMm: row.y_mm,
          zMm: row.z_mm,
          rxDeg: row.rx_deg,
          ryDeg: row.ry_deg,
          rzDeg: row.rz_deg,
        },
      ]),
  );
  const { panels } = machine;
  return (place) => {
    const frame = frames.get(place.panelId);
    if (frame === undefined) return null;
    return fromFrame3(frame, { xMm: place.xMm, yMm: place.yMm, zMm: heightMm(panels, place) });
  };
}

/** Height over the panel's top face; things under the panel are below zero. */
function heightMm(panels: Machine["panels"], place: Place): number {
  if (place.side === "top") return place.zMm;
  return -(panels.get(place.panelId)?.thickness_mm ?? 0) - place.zMm;
}

/** Added to the distance of two panels of which nothing is known: common practice, no source. */
const UNKNOWN_GAP_MM = 500;

type Distance = (a: Place, b: Place) => number;

const distances = new SharedMemory<Machine["panels"], Distance>();

/**
 * A function that gives the straight distance of two places in mm: on one panel in its own frame, else in the
 * room in the usual pose, else as if the panels lay on each other with a gap between them. Machines that share
 * their panels and poses share the function, and with it what it knows of the places.
 */
export function straightDistances(machine: Machine): Distance {
  const { poses, pose_places } = machine.book.tables;
  return distances.ask(machine.panels, [poses, pose_places], () => makeDistance(machine));
}

function makeDistance(machine: Machine): Distance {
  const inRoom = roomPlaces(machine, usualPoseId(machine));
  const { panels } = machine;
  // The same few places are measured against each other again and again.
  const stands = new WeakMap<Place, { readonly heightMm: number; readonly room: Point3Mm | null }>();
  const stand = (place: Place): { readonly heightMm: number; readonly room: Point3Mm | null } => {
    const known = stands.get(place);
    if (known !== undefined) return known;
    const made = { heightMm: heightMm(panels, place), room: inRoom(place) };
    stands.set(place, made);
    return made;
  };
  return (a, b) => {
    const p = stand(a);
    const q = stand(b);
    const flat = Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm, p.heightMm - q.heightMm);
    if (a.panelId === b.panelId) return flat;
    if (p.room === null || q.room === null) return flat + UNKNOWN_GAP_MM;
    return Math.hypot(p.room.xMm - q.room.xMm, p.room.yMm - q.room.yMm, p.room.zMm - q.room.zMm);
  };
}
