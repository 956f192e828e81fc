PRAGMA foreign_keys=OFF;--> statement-breakpoint
CREATE TABLE `__new_own_cut` (
	`club_id` text NOT NULL,
	`id` text NOT NULL,
	`name` text NOT NULL,
	`species` text NOT NULL,
	PRIMARY KEY(`club_id`, `id`),
	FOREIGN KEY (`club_id`) REFERENCES `club`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
INSERT INTO `__new_own_cut`("club_id", "id", "name", "species") SELECT "club_id", "id", "name", "species" FROM `own_cut`;--> statement-breakpoint
DROP TABLE `own_cut`;--> statement-breakpoint
ALTER TABLE `__new_own_cut` RENAME TO `own_cut`;--> statement-breakpoint
PRAGMA foreign_keys=ON;--> statement-breakpoint
ALTER TABLE `club` DROP COLUMN `retention_days`;