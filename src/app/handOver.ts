/** Hands a file to the browser to be saved. Leaves out: what is in it. */

/** How long the browser may take to begin reading, ms: some read only when the person has chosen a folder. */
const KEEP = 60_000;

/** @returns once the browser has been given the file; whether it was saved in the end no page can know */
export const handOver = (name: string, type: string, pieces: readonly string[]): void => {
  const address = URL.createObjectURL(new Blob([...pieces], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), KEEP);
};
