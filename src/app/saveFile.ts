/** Hands a file to the browser to save. */
export const saveFile = (name: string, content: Blob): void => {
  const address = URL.createObjectURL(content);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The browser reads it after this turn; a minute is far more than it needs.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
};
