CREATE TABLE `removed_piece` (
	`club_id` text NOT NULL,
	`piece_id` text NOT NULL,
	`member_id` text NOT NULL,
	PRIMARY KEY(`club_id`, `piece_id`),
	FOREIGN KEY (`club_id`) REFERENCES `club`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `upkeep` (
	`name` text PRIMARY KEY NOT NULL,
	`value` integer NOT NULL
);
