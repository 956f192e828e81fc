/** What the chat platform's side says by itself: where no command could answer. */
import type { Show } from '../../measure/show.ts';

export const platform = (_show: Show) => ({
  outsideClub: () =>
    'I keep tallies for clubs: type this in a channel of your club’s server, not in a private message.',
  outsideClubHint: () => 'Not there yet? Whoever manages the server can add me from my profile.',
  restarting: () => 'I am being restarted just now, and nothing was kept. Please try again in a minute.',
  oneMoment: () =>
    'One moment, please: that was a lot at once, so I did not take this one. Try it again in ten seconds.',
  formTooLate: () => 'The form took too long to open. Nothing is lost: please try once more.',
  trouble: ({ reference }: { reference: string }) =>
    `Something broke on my side, not on yours. If it happens again, tell whoever runs this bot: \`${reference}\`.`,
});
