/** Address of outside work, or of one part in it. */
export const outsideAddress = (bookId: string, partId?: string): string =>
  `/b/${bookId}/parts/outside${partId === undefined ? "" : `?id=${encodeURIComponent(partId)}`}`;
