CREATE TABLE `cut_change` (
	`club_id` text NOT NULL,
	`cut` text NOT NULL,
	`version` integer NOT NULL,
	`seq` integer NOT NULL,
	PRIMARY KEY(`club_id`, `cut`, `version`),
	FOREIGN KEY (`club_id`) REFERENCES `club`(`id`) ON UPDATE no action ON DELETE cascade
);
