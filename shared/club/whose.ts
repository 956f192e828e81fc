/** Whose rows are meant where something is erased: the asker's here or in every club, another member's, the whole club's. */
export type Whose =
  | { kind: 'here' }
  | { kind: 'everywhere'; clubs: number }
  | { kind: 'member'; member: string }
  | { kind: 'club' };
