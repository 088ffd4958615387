/** Landing of a point: what stands before its last dot; of a terminal the point itself. */
export function landingOfPoint(pointId: string): string {
  const dot = pointId.lastIndexOf(".");
  const colon = pointId.lastIndexOf(":");
  return dot > colon ? pointId.slice(0, dot) : pointId;
}
