/** Which change of a message is its newest: what was begun before it, and comes later, must not stand in its place. */

export interface Change {
  isNewest(): boolean;
  /** Is done, or will not be done. */
  end(): void;
}

export interface Changes {
  /** A change of `message` begins now. */
  begin(message: string): Change;
}

export function openChanges(): Changes {
  /** Those on their way, by message. */
  const newest = new Map<string, Change>();
  return {
    begin: (message) => {
      const change: Change = {
        isNewest: () => newest.get(message) === change,
        end: () => {
          if (change.isNewest()) newest.delete(message);
        },
      };
      newest.set(message, change);
      return change;
    },
  };
}
