let ask: () => void = () => {};

/** Hears when the server answers that nobody is signed in; gives what ends that. */
export function onSignedOut(listener: () => void): () => void {
  ask = listener;
  return () => {
    ask = () => {};
  };
}

/** The server wants somebody to sign in. */
export const signedOut = (): void => ask();
