CREATE TABLE `club` (
	`id` text PRIMARY KEY NOT NULL,
	`zone` text NOT NULL,
	`currency` text NOT NULL,
	`locale` text NOT NULL,
	`units` text NOT NULL,
	`grade_country` text NOT NULL,
	`margin` real DEFAULT 0.02 NOT NULL,
	`scale_error` real DEFAULT 0.02 NOT NULL,
	`season_start` integer NOT NULL,
	`welcomed_at` integer,
	`left_at` integer,
	`retention_days` integer,
	CONSTRAINT "club_margin" CHECK(margin > 0 and margin < 1),
	CONSTRAINT "club_scale_error" CHECK(scale_error >= 0 and scale_error < 1),
	CONSTRAINT "club_season_start" CHECK(season_start between 1 and 12)
);
--> statement-breakpoint
CREATE TABLE `correction` (
	`club_id` text NOT NULL,
	`piece_id` text NOT NULL,
	`interaction_id` text NOT NULL,
	`member_id` text NOT NULL,
	`at` integer NOT NULL,
	`why` text,
	`before` text NOT NULL,
	`after` text NOT NULL,
	PRIMARY KEY(`club_id`, `piece_id`, `interaction_id`),
	FOREIGN KEY (`club_id`) REFERENCES `club`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`club_id`,`piece_id`) REFERENCES `piece`(`club_id`,`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `cut_version` (
	`club_id` text NOT NULL,
	`cut` text NOT NULL,
	`version` integer NOT NULL,
	PRIMARY KEY(`club_id`, `cut`),
	FOREIGN KEY (`club_id`) REFERENCES `club`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `draft` (
	`club_id` text NOT NULL,
	`id` text NOT NULL,
	`member_id` text NOT NULL,
	`command` text NOT NULL,
	`options` text NOT NULL,
	`confirmed` text NOT NULL,
	`readings` text NOT NULL,
	`interaction_id` text NOT NULL,
	`expires_at` integer NOT NULL,
	PRIMARY KEY(`club_id`, `id`),
	FOREIGN KEY (`club_id`) REFERENCES `club`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `member` (
	`club_id` text NOT NULL,
	`id` text NOT NULL,
	`units` text,
	`label_decimals` text,
	`scale_decimals` text,
	`presets` text NOT NULL,
	`hidden` integer NOT NULL,
	PRIMARY KEY(`club_id`, `id`),
	FOREIGN KEY (`club_id`) REFERENCES `club`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `own_cut` (
	`club_id` text NOT NULL,
	`id` text NOT NULL,
	`name` text NOT NULL,
	`species` text NOT NULL,
	`least_ng` integer,
	`most_ng` integer,
	PRIMARY KEY(`club_id`, `id`),
	FOREIGN KEY (`club_id`) REFERENCES `club`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "least_ng_whole" CHECK(least_ng is null or (typeof(least_ng) = 'integer' and least_ng >= 1)),
	CONSTRAINT "most_ng_whole" CHECK(most_ng is null or (typeof(most_ng) = 'integer' and most_ng >= 1))
);
--> statement-breakpoint
CREATE TABLE `pan` (
	`club_id` text NOT NULL,
	`member_id` text NOT NULL,
	`key` text NOT NULL,
	`name` text NOT NULL,
	`weight_ng` integer NOT NULL,
	PRIMARY KEY(`club_id`, `member_id`, `key`),
	FOREIGN KEY (`club_id`) REFERENCES `club`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "weight_ng_whole" CHECK(weight_ng is null or (typeof(weight_ng) = 'integer' and weight_ng >= 0))
);
--> statement-breakpoint
CREATE TABLE `piece` (
	`club_id` text NOT NULL,
	`id` text NOT NULL,
	`seq` integer NOT NULL,
	`member_id` text,
	`posted_at` integer,
	`day` text,
	`cut` text,
	`grade` text,
	`style` text,
	`bone` text,
	`wrap` text,
	`shop` text,
	`note` text,
	`pieces` integer,
	`bought_ng` integer,
	`bagged_ng` integer,
	`trim_ng` integer,
	`left_ng` integer,
	`added_ng` integer,
	`cooked_ng` integer,
	`scraps_ng` integer,
	`served_ng` integer,
	`saved` text NOT NULL,
	`price_amount` integer,
	`price_basis` text,
	`price_currency` text,
	`price_text` text,
	`pumped` integer NOT NULL,
	`approximate` integer NOT NULL,
	`typed` text NOT NULL,
	`confirmed_at` integer,
	`set_aside_at` integer,
	`set_aside_why` text,
	`removed_at` integer,
	`revision` integer NOT NULL,
	PRIMARY KEY(`club_id`, `id`),
	FOREIGN KEY (`club_id`) REFERENCES `club`(`id`) ON UPDATE no action ON DELETE cascade,
	CONSTRAINT "piece_seq_whole" CHECK(typeof(seq) = 'integer' and seq >= 1),
	CONSTRAINT "piece_there" CHECK(removed_at is not null or (member_id is not null and posted_at is not null and day is not null and cut is not null and pieces is not null and bought_ng is not null)),
	CONSTRAINT "piece_removed" CHECK(removed_at is null or (saved = '[]' and typed = '{}' and approximate = 0 and pumped = 0 and revision = 0 and coalesce(member_id, posted_at, day, cut, grade, style, bone, wrap, shop, note, pieces, bought_ng, bagged_ng, trim_ng, left_ng, added_ng, cooked_ng, scraps_ng, served_ng, price_amount, confirmed_at, set_aside_at, set_aside_why) is null)),
	CONSTRAINT "piece_price" CHECK((price_amount is null) = (price_basis is null) and (price_amount is null) = (price_currency is null) and (price_amount is null) = (price_text is null)),
	CONSTRAINT "pieces_whole" CHECK(pieces is null or (typeof(pieces) = 'integer' and pieces >= 1)),
	CONSTRAINT "bought_ng_whole" CHECK(bought_ng is null or (typeof(bought_ng) = 'integer' and bought_ng >= 1)),
	CONSTRAINT "bagged_ng_whole" CHECK(bagged_ng is null or (typeof(bagged_ng) = 'integer' and bagged_ng >= 0)),
	CONSTRAINT "trim_ng_whole" CHECK(trim_ng is null or (typeof(trim_ng) = 'integer' and trim_ng >= 0)),
	CONSTRAINT "left_ng_whole" CHECK(left_ng is null or (typeof(left_ng) = 'integer' and left_ng >= 0)),
	CONSTRAINT "added_ng_whole" CHECK(added_ng is null or (typeof(added_ng) = 'integer' and added_ng >= 0)),
	CONSTRAINT "cooked_ng_whole" CHECK(cooked_ng is null or (typeof(cooked_ng) = 'integer' and cooked_ng >= 0)),
	CONSTRAINT "scraps_ng_whole" CHECK(scraps_ng is null or (typeof(scraps_ng) = 'integer' and scraps_ng >= 0)),
	CONSTRAINT "served_ng_whole" CHECK(served_ng is null or (typeof(served_ng) = 'integer' and served_ng >= 0)),
	CONSTRAINT "price_amount_whole" CHECK(price_amount is null or (typeof(price_amount) = 'integer' and price_amount >= 0))
);
--> statement-breakpoint
CREATE UNIQUE INDEX `piece_seq` ON `piece` (`club_id`,`seq`);--> statement-breakpoint
CREATE INDEX `piece_cut` ON `piece` (`club_id`,`cut`,`seq`);--> statement-breakpoint
CREATE INDEX `piece_member` ON `piece` (`club_id`,`member_id`,`seq`);--> statement-breakpoint
CREATE INDEX `piece_shop` ON `piece` (`club_id`,`shop`);--> statement-breakpoint
CREATE TABLE `posted` (
	`club_id` text NOT NULL,
	`piece_id` text NOT NULL,
	`channel_id` text NOT NULL,
	`message_id` text NOT NULL,
	PRIMARY KEY(`club_id`, `piece_id`, `channel_id`, `message_id`),
	FOREIGN KEY (`club_id`) REFERENCES `club`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`club_id`,`piece_id`) REFERENCES `piece`(`club_id`,`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `reminder` (
	`club_id` text NOT NULL,
	`piece_id` text NOT NULL,
	`member_id` text NOT NULL,
	`due_at` integer NOT NULL,
	PRIMARY KEY(`club_id`, `piece_id`, `member_id`),
	FOREIGN KEY (`club_id`) REFERENCES `club`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`club_id`,`piece_id`) REFERENCES `piece`(`club_id`,`id`) ON UPDATE no action ON DELETE cascade
);
