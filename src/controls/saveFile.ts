/** Hands a file to the browser to be saved; whether it was in the end no page can know. Leaves out: what is in it. */

/** How long the browser may take to begin reading, ms: some read only when the person has chosen a folder. */
const KEEP = 60_000;

export const saveFile = (name: string, content: Blob): void => {
  const address = URL.createObjectURL(content);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), KEEP);
};
