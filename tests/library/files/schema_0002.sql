PRAGMA application_id = 1416774254;
BEGIN TRANSACTION;
CREATE TABLE "adjuster" (
	id TEXT NOT NULL, 
	unit_id TEXT NOT NULL, 
	kind TEXT NOT NULL, 
	speed TEXT NOT NULL, 
	name TEXT NOT NULL, 
	counting TEXT NOT NULL, 
	position_names TEXT NOT NULL, 
	closed_turn TEXT NOT NULL, 
	counting_order INTEGER NOT NULL, 
	depends_on TEXT, depends_how TEXT, depends_position INTEGER, 
	chart_from TEXT NOT NULL, 
	chart_steps INTEGER, 
	note TEXT NOT NULL, 
	archived_at TEXT, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_adjuster PRIMARY KEY (id), 
	CONSTRAINT ck_adjuster_counting CHECK (counting IN ('clicks', 'turns', 'positions')), 
	CONSTRAINT fk_adjuster_unit_id FOREIGN KEY(unit_id) REFERENCES unit (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_adjuster_depends_on FOREIGN KEY(depends_on) REFERENCES adjuster (id) DEFERRABLE INITIALLY DEFERRED
)
 STRICT

;
INSERT INTO "adjuster" VALUES('b52a1cbe-d2e9-4bad-8feb-6c9ecb6ba19b','5f072154-220c-4f21-829a-aa5e3b446c7c','compression','low','','clicks','','unknown',0,NULL,NULL,NULL,'closed',NULL,'',NULL,2);
INSERT INTO "adjuster" VALUES('c234b9b7-6e50-46ab-a99d-5860a5d99dec','07538be2-2ede-4623-aa87-d2af8deb6da3','compression','low','','clicks','','unknown',0,NULL,NULL,NULL,'closed',NULL,'',NULL,2);
INSERT INTO "adjuster" VALUES('8a9ba067-cfff-4cfa-a64b-54805d005456','07538be2-2ede-4623-aa87-d2af8deb6da3','rebound','low','','clicks','','unknown',1,NULL,NULL,NULL,'closed',NULL,'',NULL,2);
INSERT INTO "adjuster" VALUES('51f68db9-74da-48f0-959e-25a4890b692b','5f072154-220c-4f21-829a-aa5e3b446c7c','rebound','low','','clicks','','unknown',1,'b52a1cbe-d2e9-4bad-8feb-6c9ecb6ba19b','drags',2,'closed',NULL,'',NULL,32);
INSERT INTO "adjuster" VALUES('584c5f83-cb80-49e5-9281-762365f02fa2','2261a01d-190f-46b7-b9fd-61c596fe8893','compression','low','','clicks','','unknown',0,NULL,NULL,NULL,'closed',NULL,'',NULL,38);
INSERT INTO "adjuster" VALUES('33498a58-bb30-4324-a4ab-6d1ebc803dc5','2261a01d-190f-46b7-b9fd-61c596fe8893','rebound','low','','clicks','','unknown',1,'584c5f83-cb80-49e5-9281-762365f02fa2','drags',2,'closed',NULL,'',NULL,38);
INSERT INTO "adjuster" VALUES('1068e49e-3de8-44ec-b129-8d2f9be3ddf0','00e69ff0-af45-4ac1-a5ad-c1138a7fc66e','compression','low','','clicks','','unknown',0,NULL,NULL,NULL,'closed',NULL,'',NULL,38);
INSERT INTO "adjuster" VALUES('7dc58f81-a3ee-4207-9584-91ff76a72c94','00e69ff0-af45-4ac1-a5ad-c1138a7fc66e','rebound','low','','clicks','','unknown',1,NULL,NULL,NULL,'closed',NULL,'',NULL,38);
CREATE TABLE alembic_version (
	version_num TEXT NOT NULL, 
	CONSTRAINT pk_alembic_version PRIMARY KEY (version_num)
)
 STRICT

;
INSERT INTO "alembic_version" VALUES('0002');
CREATE TABLE "bike" (
	id TEXT NOT NULL, 
	name TEXT NOT NULL, 
	layout TEXT NOT NULL, 
	discipline TEXT NOT NULL, 
	is_ebike INTEGER NOT NULL, 
	rear_travel_mm REAL, 
	head_angle_deg REAL, 
	wheelbase_mm REAL, 
	bb_drop_mm REAL, 
	tags TEXT NOT NULL, 
	note TEXT NOT NULL, 
	created_at TEXT NOT NULL, template_at TEXT, 
	archived_at TEXT, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_bike PRIMARY KEY (id), 
	CONSTRAINT ck_bike_is_ebike CHECK (is_ebike IN (0, 1))
)
 STRICT

;
INSERT INTO "bike" VALUES('524af228-d00f-4d26-88f5-6e1aa34f039f','Larch 150','air_air','trail',0,145.0,NULL,NULL,NULL,'','Fährt; <b>quoted</b> ''twice'' — ½ turn','2031-05-14T09:00:02+00:00',NULL,NULL,27);
INSERT INTO "bike" VALUES('05c924d3-f7b7-4656-8065-36368bff3102','Birch (template)','air_air','trail',0,145.0,NULL,NULL,NULL,'','Fährt; <b>quoted</b> ''twice'' — ½ turn','2031-06-02T09:00:11+00:00','2031-06-02T09:00:11+00:00',NULL,40);
CREATE TABLE bike_rider (
	id TEXT NOT NULL, 
	bike_id TEXT NOT NULL, 
	person_id TEXT NOT NULL, 
	is_main INTEGER NOT NULL, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_bike_rider PRIMARY KEY (id), 
	CONSTRAINT ck_bike_rider_is_main CHECK (is_main IN (0, 1)), 
	CONSTRAINT uq_bike_rider_bike_id_person_id UNIQUE (bike_id, person_id), 
	CONSTRAINT fk_bike_rider_bike_id FOREIGN KEY(bike_id) REFERENCES bike (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_bike_rider_person_id FOREIGN KEY(person_id) REFERENCES person (id) DEFERRABLE INITIALLY DEFERRED
)
 STRICT

;
INSERT INTO "bike_rider" VALUES('37d9cf81-99bc-4632-804a-02ee08e843fd','524af228-d00f-4d26-88f5-6e1aa34f039f','dab31048-9483-469f-9ff3-f4e393f8dd8d',1,2);
CREATE TABLE blind_plan (
	id TEXT NOT NULL, 
	session_id TEXT NOT NULL, 
	labels TEXT NOT NULL, 
	"order" TEXT NOT NULL, 
	seed INTEGER NOT NULL, 
	digest TEXT NOT NULL, 
	fixed_at TEXT NOT NULL, 
	revealed_at TEXT, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_blind_plan PRIMARY KEY (id), 
	CONSTRAINT fk_blind_plan_session_id FOREIGN KEY(session_id) REFERENCES session (id) DEFERRABLE INITIALLY DEFERRED
)
 STRICT

;
INSERT INTO "blind_plan" VALUES('dc8409b6-7099-42c6-8ed1-bba48719d095','7fedf9fc-3f87-40a1-bf17-e2b14cfdde1d','A|B','ABBA',7,'dddddddddddddddddddddddddddddddddddddddddddddddddddddddddddddddd','2031-05-14T09:00:36+00:00',NULL,25);
CREATE TABLE card_issue (
	id TEXT NOT NULL, 
	bike_id TEXT NOT NULL, 
	rider_id TEXT NOT NULL, 
	setup_id TEXT NOT NULL, 
	made_at TEXT NOT NULL, 
	person_id TEXT, 
	note TEXT NOT NULL, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_card_issue PRIMARY KEY (id), 
	CONSTRAINT fk_card_issue_bike_id FOREIGN KEY(bike_id) REFERENCES bike (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_card_issue_rider_id FOREIGN KEY(rider_id) REFERENCES person (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_card_issue_setup_id FOREIGN KEY(setup_id) REFERENCES setup (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_card_issue_person_id FOREIGN KEY(person_id) REFERENCES person (id) DEFERRABLE INITIALLY DEFERRED
)
 STRICT

;
INSERT INTO "card_issue" VALUES('34b31a20-f0cd-4ca9-9b87-37b461148d95','524af228-d00f-4d26-88f5-6e1aa34f039f','dab31048-9483-469f-9ff3-f4e393f8dd8d','538659b5-c4f0-49e2-9cd6-fd72c6717edb','2031-05-14T09:00:38+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','',25);
CREATE TABLE "check_in" (
	id TEXT NOT NULL, 
	bike_id TEXT NOT NULL, 
	made_at TEXT NOT NULL, 
	depth TEXT NOT NULL, 
	person_id TEXT, bothers TEXT, last_done TEXT, 
	note TEXT NOT NULL, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_check_in PRIMARY KEY (id), 
	CONSTRAINT fk_check_in_bike_id FOREIGN KEY(bike_id) REFERENCES bike (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_check_in_person_id FOREIGN KEY(person_id) REFERENCES person (id) DEFERRABLE INITIALLY DEFERRED
)
 STRICT

;
INSERT INTO "check_in" VALUES('db4e36e8-7de2-4672-a7ea-385a57b2454c','524af228-d00f-4d26-88f5-6e1aa34f039f','2031-05-14T09:00:32+00:00','quick','77a4ea2b-3e93-4f69-b93c-90c17804e868',NULL,NULL,'',25);
INSERT INTO "check_in" VALUES('b3312701-6029-481d-aa17-f8fe0f41710d','524af228-d00f-4d26-88f5-6e1aa34f039f','2031-06-02T09:00:07+00:00','quick','77a4ea2b-3e93-4f69-b93c-90c17804e868','Knocks','New pads','',34);
CREATE TABLE "check_item" (
	id TEXT NOT NULL, 
	checkin_id TEXT NOT NULL, 
	code TEXT NOT NULL, 
	severity TEXT NOT NULL, 
	note TEXT NOT NULL, 
	is_declined INTEGER NOT NULL, 
	override_reason TEXT NOT NULL, reason TEXT, measured_mm REAL, overruled_by TEXT, overruled_at TEXT, closed_at TEXT, closed_how TEXT, 
	photo_id TEXT, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_check_item PRIMARY KEY (id), 
	CONSTRAINT ck_check_item_is_declined CHECK (is_declined IN (0, 1)), 
	CONSTRAINT fk_check_item_checkin_id FOREIGN KEY(checkin_id) REFERENCES check_in (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_check_item_photo_id FOREIGN KEY(photo_id) REFERENCES photo (id) DEFERRABLE INITIALLY DEFERRED
)
 STRICT

;
INSERT INTO "check_item" VALUES('abf2a62e-2ac7-4ec3-b80b-a9364b4f8c2a','db4e36e8-7de2-4672-a7ea-385a57b2454c','seals','attend','weeps',0,'',NULL,NULL,NULL,NULL,NULL,NULL,'00db2a16-f60a-4a16-a517-d0aa2291b179',25);
INSERT INTO "check_item" VALUES('ee4b009f-e7ea-4fd5-a2b9-74d62896586e','b3312701-6029-481d-aa17-f8fe0f41710d','headset','fine','',0,'','',NULL,NULL,NULL,NULL,NULL,NULL,34);
INSERT INTO "check_item" VALUES('b277a4ec-65c8-47b0-930c-b0167db907a0','b3312701-6029-481d-aa17-f8fe0f41710d','wheels','stop','',0,'Only pushed and rolled','Spoke broken',NULL,'B. Halloran','2031-06-02T09:00:08+00:00',NULL,NULL,NULL,35);
INSERT INTO "check_item" VALUES('f27e1fb3-1b00-4aa6-8da1-c675cbc705d5','b3312701-6029-481d-aa17-f8fe0f41710d','frame','attend','near the weld',1,'','Marks',NULL,NULL,NULL,NULL,NULL,'0b23fe11-7daf-49d9-8530-76a15603a115',36);
INSERT INTO "check_item" VALUES('3c3153f6-d5c6-418c-9034-08f46308806c','b3312701-6029-481d-aa17-f8fe0f41710d','exposed_front','advise','',0,'','',148.5,NULL,NULL,'2031-06-02T09:00:10+00:00','seen to',NULL,37);
CREATE TABLE course (
	id TEXT NOT NULL, 
	name TEXT NOT NULL, 
	has_heavy_hit INTEGER NOT NULL, 
	typical_s REAL, 
	altitude_m REAL, 
	note TEXT NOT NULL, 
	archived_at TEXT, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_course PRIMARY KEY (id), 
	CONSTRAINT ck_course_has_heavy_hit CHECK (has_heavy_hit IN (0, 1))
)
 STRICT

;
INSERT INTO "course" VALUES('28a2718d-9ace-48a3-a926-9bc8197ab608','Quarry loop',1,NULL,NULL,'',NULL,22);
CREATE TABLE deed (
	number INTEGER NOT NULL, 
	id TEXT NOT NULL, 
	at TEXT NOT NULL, 
	person_id TEXT, 
	label TEXT NOT NULL, 
	bike_id TEXT, 
	station TEXT NOT NULL, 
	state TEXT NOT NULL, 
	stamp INTEGER NOT NULL, 
	schema_number TEXT NOT NULL, 
	start_id TEXT NOT NULL, 
	undone_at TEXT, 
	CONSTRAINT pk_deed PRIMARY KEY (number), 
	CONSTRAINT ck_deed_state CHECK (state IN ('done', 'undone', 'dead')), 
	CONSTRAINT uq_deed_id UNIQUE (id)
)
 STRICT

;
INSERT INTO "deed" VALUES(1,'ceb2e93d-c7f8-43e5-8a8d-f7679744c083','2031-05-14T09:00:01+00:00',NULL,'Add R. Okafor',NULL,'garage','done',1,'0001','b80290d1-5b0c-4fca-81b0-051d26440252',NULL);
INSERT INTO "deed" VALUES(2,'3f6e426e-5353-4790-95f5-e2819afe9bc2','2031-05-14T09:00:02+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Add Larch 150',NULL,'garage','done',2,'0001','b80290d1-5b0c-4fca-81b0-051d26440252',NULL);
INSERT INTO "deed" VALUES(3,'7ebacefb-e833-4e45-af2e-ec04a1fc1246','2031-05-14T09:00:03+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','As found','524af228-d00f-4d26-88f5-6e1aa34f039f','','done',3,'0001','b80290d1-5b0c-4fca-81b0-051d26440252',NULL);
INSERT INTO "deed" VALUES(4,'1eb5eff3-4603-4d90-9bfd-a7ef4df44728','2031-05-14T09:00:04+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Range','524af228-d00f-4d26-88f5-6e1aa34f039f','','done',4,'0001','b80290d1-5b0c-4fca-81b0-051d26440252',NULL);
INSERT INTO "deed" VALUES(5,'e2a81570-090e-47ef-ada6-e8898871364e','2031-05-14T09:00:05+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','As found','524af228-d00f-4d26-88f5-6e1aa34f039f','','done',5,'0001','b80290d1-5b0c-4fca-81b0-051d26440252',NULL);
INSERT INTO "deed" VALUES(6,'d5e37274-817c-4a8f-b44b-e9a26d1a195b','2031-05-14T09:00:06+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Range','524af228-d00f-4d26-88f5-6e1aa34f039f','','done',6,'0001','b80290d1-5b0c-4fca-81b0-051d26440252',NULL);
INSERT INTO "deed" VALUES(7,'548fe1f8-dbe8-45c6-bf85-937fb68a820b','2031-05-14T09:00:07+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','As found','524af228-d00f-4d26-88f5-6e1aa34f039f','','done',7,'0001','b80290d1-5b0c-4fca-81b0-051d26440252',NULL);
INSERT INTO "deed" VALUES(8,'a69f132b-c060-435f-8ee0-7a325bf182f4','2031-05-14T09:00:08+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Range','524af228-d00f-4d26-88f5-6e1aa34f039f','','done',8,'0001','b80290d1-5b0c-4fca-81b0-051d26440252',NULL);
INSERT INTO "deed" VALUES(9,'335d08d0-8fa6-4313-983f-31c9a5675188','2031-05-14T09:00:09+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','As found','524af228-d00f-4d26-88f5-6e1aa34f039f','','done',9,'0001','b80290d1-5b0c-4fca-81b0-051d26440252',NULL);
INSERT INTO "deed" VALUES(10,'2e153129-e6fd-4159-a032-051cf35de209','2031-05-14T09:00:10+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Range','524af228-d00f-4d26-88f5-6e1aa34f039f','','done',10,'0001','b80290d1-5b0c-4fca-81b0-051d26440252',NULL);
INSERT INTO "deed" VALUES(11,'ba7ce1c9-8c00-4903-a680-1cfc2013fc71','2031-05-14T09:00:11+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Found','524af228-d00f-4d26-88f5-6e1aa34f039f','','done',11,'0001','b80290d1-5b0c-4fca-81b0-051d26440252',NULL);
INSERT INTO "deed" VALUES(12,'a2bb41ec-78cc-4001-a54a-d06467293633','2031-05-14T09:00:12+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Found','524af228-d00f-4d26-88f5-6e1aa34f039f','','done',12,'0001','b80290d1-5b0c-4fca-81b0-051d26440252',NULL);
INSERT INTO "deed" VALUES(13,'144bc0bc-d944-4a9a-b051-eed01dce6aa2','2031-05-14T09:00:13+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Found','524af228-d00f-4d26-88f5-6e1aa34f039f','','done',13,'0001','b80290d1-5b0c-4fca-81b0-051d26440252',NULL);
INSERT INTO "deed" VALUES(14,'d87662fd-296a-43cb-b3b1-3652dd1b8240','2031-05-14T09:00:14+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Found','524af228-d00f-4d26-88f5-6e1aa34f039f','','done',14,'0001','b80290d1-5b0c-4fca-81b0-051d26440252',NULL);
INSERT INTO "deed" VALUES(15,'c069f3b9-c2de-4246-8d9f-9231942fabed','2031-05-14T09:00:15+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Shock: area','524af228-d00f-4d26-88f5-6e1aa34f039f','garage','done',15,'0001','b80290d1-5b0c-4fca-81b0-051d26440252',NULL);
INSERT INTO "deed" VALUES(16,'a87425db-50c4-4cbc-9fe8-e92f83b22d43','2031-05-14T09:00:16+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Bike: note','524af228-d00f-4d26-88f5-6e1aa34f039f','garage','done',16,'0001','b80290d1-5b0c-4fca-81b0-051d26440252',NULL);
INSERT INTO "deed" VALUES(17,'b6357671-5b71-45ee-99ac-86070ccbf067','2031-05-14T09:00:19+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Keep front sag','524af228-d00f-4d26-88f5-6e1aa34f039f','sag','done',17,'0001','b80290d1-5b0c-4fca-81b0-051d26440252',NULL);
INSERT INTO "deed" VALUES(18,'04e9bbd4-5e26-4029-9cb2-32210c6b8f50','2031-05-14T09:00:22+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Keep rear sag','524af228-d00f-4d26-88f5-6e1aa34f039f','sag','done',18,'0001','b80290d1-5b0c-4fca-81b0-051d26440252',NULL);
INSERT INTO "deed" VALUES(19,'8280fc82-209c-4f73-9776-b17a89894b9e','2031-05-14T09:00:24+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Keep survey','524af228-d00f-4d26-88f5-6e1aa34f039f','sag','done',19,'0001','b80290d1-5b0c-4fca-81b0-051d26440252',NULL);
INSERT INTO "deed" VALUES(20,'839a7975-2b6b-4903-9623-df07b92078cf','2031-05-14T09:00:25+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Keep setup no. 1','524af228-d00f-4d26-88f5-6e1aa34f039f','baseline','done',20,'0001','b80290d1-5b0c-4fca-81b0-051d26440252',NULL);
INSERT INTO "deed" VALUES(21,'dbf06152-5e03-470b-a355-8590c70492f2','2031-05-14T09:00:26+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Set all','524af228-d00f-4d26-88f5-6e1aa34f039f','baseline','done',21,'0001','b80290d1-5b0c-4fca-81b0-051d26440252',NULL);
INSERT INTO "deed" VALUES(22,'e7c9cdb3-ce50-4263-aa22-e2d434ec9db3','2031-05-14T09:00:27+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Add a course',NULL,'ride','done',22,'0001','b80290d1-5b0c-4fca-81b0-051d26440252',NULL);
INSERT INTO "deed" VALUES(23,'4544e0b4-2d4a-4a24-b77e-ab0ac0017de0','2031-05-14T09:00:29+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Start','524af228-d00f-4d26-88f5-6e1aa34f039f','ride','done',23,'0001','b80290d1-5b0c-4fca-81b0-051d26440252',NULL);
INSERT INTO "deed" VALUES(24,'7082bb3f-29d1-4309-b38a-27c356157f9b','2031-05-14T09:00:30+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Keep run','524af228-d00f-4d26-88f5-6e1aa34f039f','ride','done',24,'0001','b80290d1-5b0c-4fca-81b0-051d26440252',NULL);
INSERT INTO "deed" VALUES(25,'3719f9ac-1281-4b97-ba92-96d6ef5863c0','2031-05-14T09:00:33+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Add what has no page yet','524af228-d00f-4d26-88f5-6e1aa34f039f','garage','done',25,'0001','b80290d1-5b0c-4fca-81b0-051d26440252',NULL);
INSERT INTO "deed" VALUES(26,'625fa5da-f32c-4c7b-b442-bb667c792199','2031-05-14T09:00:39+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Rename','524af228-d00f-4d26-88f5-6e1aa34f039f','garage','dead',27,'0001','b80290d1-5b0c-4fca-81b0-051d26440252','2031-05-14T09:00:40+00:00');
INSERT INTO "deed" VALUES(27,'a3d59757-fb2c-4b32-a915-aae3be1db5da','2031-06-02T09:00:01+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Shock: mounting','524af228-d00f-4d26-88f5-6e1aa34f039f','garage','done',28,'0002','faffef96-543a-452e-9610-21ba6daaa072',NULL);
INSERT INTO "deed" VALUES(28,'c760b085-1bca-4ee4-bbe2-4df6a44467e0','2031-06-02T09:00:02+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Fork: second chamber','524af228-d00f-4d26-88f5-6e1aa34f039f','garage','done',29,'0002','faffef96-543a-452e-9610-21ba6daaa072',NULL);
INSERT INTO "deed" VALUES(29,'f11bc01b-5a8d-4c1f-88d4-60838dd494ab','2031-06-02T09:00:03+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Spring: pairs','524af228-d00f-4d26-88f5-6e1aa34f039f','sag','done',30,'0002','faffef96-543a-452e-9610-21ba6daaa072',NULL);
INSERT INTO "deed" VALUES(30,'4bb3747e-2182-4cc7-b6b6-5e08495e34fd','2031-06-02T09:00:04+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Sag: negative','524af228-d00f-4d26-88f5-6e1aa34f039f','sag','done',31,'0002','faffef96-543a-452e-9610-21ba6daaa072',NULL);
INSERT INTO "deed" VALUES(31,'9ccab47e-4007-4501-b5ca-6c7c47e2262c','2031-06-02T09:00:05+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Gated','524af228-d00f-4d26-88f5-6e1aa34f039f','adjusters','done',32,'0002','faffef96-543a-452e-9610-21ba6daaa072',NULL);
INSERT INTO "deed" VALUES(32,'cf7c1ddc-9eb3-414a-aa57-e60110432efc','2031-06-02T09:00:06+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Push test','524af228-d00f-4d26-88f5-6e1aa34f039f','adjusters','done',33,'0002','faffef96-543a-452e-9610-21ba6daaa072',NULL);
INSERT INTO "deed" VALUES(33,'8596eb9c-bf76-423e-ba24-e14626f3e74d','2031-06-02T09:00:07+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','File the check-in','524af228-d00f-4d26-88f5-6e1aa34f039f','checkin','done',34,'0002','faffef96-543a-452e-9610-21ba6daaa072',NULL);
INSERT INTO "deed" VALUES(34,'79195831-36c3-42fe-92d0-4fd485a1a43e','2031-06-02T09:00:08+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Overruled: wheels','524af228-d00f-4d26-88f5-6e1aa34f039f','checkin','done',35,'0002','faffef96-543a-452e-9610-21ba6daaa072',NULL);
INSERT INTO "deed" VALUES(35,'eff89db7-2186-46c6-bf66-49832abe4de1','2031-06-02T09:00:09+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Declined: frame','524af228-d00f-4d26-88f5-6e1aa34f039f','checkin','done',36,'0002','faffef96-543a-452e-9610-21ba6daaa072',NULL);
INSERT INTO "deed" VALUES(36,'18dca7e6-9bb2-4a7e-a5b4-9c28793237da','2031-06-02T09:00:10+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Seen to','524af228-d00f-4d26-88f5-6e1aa34f039f','checkin','done',37,'0002','faffef96-543a-452e-9610-21ba6daaa072',NULL);
INSERT INTO "deed" VALUES(37,'64b585e8-c60e-4a54-bf32-2ee51023a4af','2031-06-02T09:00:11+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Keep as a template',NULL,'garage','done',38,'0002','faffef96-543a-452e-9610-21ba6daaa072',NULL);
INSERT INTO "deed" VALUES(38,'52e08ec2-474b-4752-af16-01bd1150c476','2031-06-02T09:00:12+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','Bike: tags','05c924d3-f7b7-4656-8065-36368bff3102','garage','undone',40,'0002','faffef96-543a-452e-9610-21ba6daaa072','2031-06-02T09:00:13+00:00');
CREATE TABLE deed_draft (
	deed_id TEXT NOT NULL, 
	draft_id TEXT NOT NULL, 
	CONSTRAINT pk_deed_draft PRIMARY KEY (deed_id, draft_id), 
	CONSTRAINT fk_deed_draft_deed_id FOREIGN KEY(deed_id) REFERENCES deed (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_deed_draft_draft_id FOREIGN KEY(draft_id) REFERENCES draft (id) DEFERRABLE INITIALLY DEFERRED
)
 WITHOUT ROWID,
 STRICT

;
INSERT INTO "deed_draft" VALUES('8280fc82-209c-4f73-9776-b17a89894b9e','8c683947-41ad-443a-adec-47775166a51d');
CREATE TABLE deed_row (
	deed_id TEXT NOT NULL, 
	table_name TEXT NOT NULL, 
	row_id TEXT NOT NULL, 
	"before" TEXT, 
	"after" TEXT, 
	CONSTRAINT pk_deed_row PRIMARY KEY (deed_id, table_name, row_id), 
	CONSTRAINT fk_deed_row_deed_id FOREIGN KEY(deed_id) REFERENCES deed (id) DEFERRABLE INITIALLY DEFERRED
)
 WITHOUT ROWID,
 STRICT

;
INSERT INTO "deed_row" VALUES('04e9bbd4-5e26-4029-9cb2-32210c6b8f50','on_bike','19041b51-65ea-455f-882c-a381601383b7',NULL,'{"id":"19041b51-65ea-455f-882c-a381601383b7","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","at":"2031-05-14T09:00:22+00:00","sequence":19,"item":"pressure","subject_id":"07538be2-2ede-4623-aa87-d2af8deb6da3","value":1240.0,"how":"as_pumped","range_id":null,"temperature_c":20.0,"pump_id":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","deed_id":"04e9bbd4-5e26-4029-9cb2-32210c6b8f50"}');
INSERT INTO "deed_row" VALUES('04e9bbd4-5e26-4029-9cb2-32210c6b8f50','on_bike','5e459fa0-ee89-405b-9260-01b323d046aa',NULL,'{"id":"5e459fa0-ee89-405b-9260-01b323d046aa","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","at":"2031-05-14T09:00:22+00:00","sequence":20,"item":"spacers","subject_id":"07538be2-2ede-4623-aa87-d2af8deb6da3","value":1.0,"how":"set_to","range_id":null,"temperature_c":null,"pump_id":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","deed_id":"04e9bbd4-5e26-4029-9cb2-32210c6b8f50"}');
INSERT INTO "deed_row" VALUES('04e9bbd4-5e26-4029-9cb2-32210c6b8f50','sag_measurement','2e2130b6-d2e7-4378-a281-900183132d3b',NULL,'{"id":"2e2130b6-d2e7-4378-a281-900183132d3b","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","rider_id":"dab31048-9483-469f-9ff3-f4e393f8dd8d","unit_id":"07538be2-2ede-4623-aa87-d2af8deb6da3","measured_at":"2031-05-14T09:00:20+00:00","posture":"standing","travel_mm":60.0,"sag_mm":17.0,"spread_mm":0.5,"target":0.28500000000000003,"target_low":0.27,"target_high":0.3,"target_origin":"common_practice","is_kept":0,"method":"helper","generation_id":"883972de-8f39-42ad-a8d1-f007e99664d8","pressure_kpa":1178.0,"pressure_how":"as_pumped","second_kpa":null,"rate_n_per_mm":null,"preload_mm":null,"spacers":1,"temperature_c":20.0,"rider_mass_kg":84.5,"pump_id":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","note":""}');
INSERT INTO "deed_row" VALUES('04e9bbd4-5e26-4029-9cb2-32210c6b8f50','sag_measurement','d9f2b97c-bd73-49ad-81ac-69e3148ace6d',NULL,'{"id":"d9f2b97c-bd73-49ad-81ac-69e3148ace6d","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","rider_id":"dab31048-9483-469f-9ff3-f4e393f8dd8d","unit_id":"07538be2-2ede-4623-aa87-d2af8deb6da3","measured_at":"2031-05-14T09:00:21+00:00","posture":"standing","travel_mm":60.0,"sag_mm":17.0,"spread_mm":0.5,"target":0.28500000000000003,"target_low":0.27,"target_high":0.3,"target_origin":"common_practice","is_kept":1,"method":"helper","generation_id":"883972de-8f39-42ad-a8d1-f007e99664d8","pressure_kpa":1240.0,"pressure_how":"as_pumped","second_kpa":null,"rate_n_per_mm":null,"preload_mm":null,"spacers":1,"temperature_c":20.0,"rider_mass_kg":84.5,"pump_id":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","note":""}');
INSERT INTO "deed_row" VALUES('04e9bbd4-5e26-4029-9cb2-32210c6b8f50','sag_reading','5b895a2d-ce62-4700-a6f6-266b0a34d24f',NULL,'{"id":"5b895a2d-ce62-4700-a6f6-266b0a34d24f","measurement_id":"2e2130b6-d2e7-4378-a281-900183132d3b","number":3,"sag_mm":17.0,"settled_from":""}');
INSERT INTO "deed_row" VALUES('04e9bbd4-5e26-4029-9cb2-32210c6b8f50','sag_reading','6ce74894-bd82-459b-a465-84a00a99d70b',NULL,'{"id":"6ce74894-bd82-459b-a465-84a00a99d70b","measurement_id":"d9f2b97c-bd73-49ad-81ac-69e3148ace6d","number":3,"sag_mm":17.0,"settled_from":""}');
INSERT INTO "deed_row" VALUES('04e9bbd4-5e26-4029-9cb2-32210c6b8f50','sag_reading','824f470d-3657-40d7-b71d-6121c213f820',NULL,'{"id":"824f470d-3657-40d7-b71d-6121c213f820","measurement_id":"d9f2b97c-bd73-49ad-81ac-69e3148ace6d","number":1,"sag_mm":17.0,"settled_from":""}');
INSERT INTO "deed_row" VALUES('04e9bbd4-5e26-4029-9cb2-32210c6b8f50','sag_reading','b419e947-36b0-40fd-82c2-fc898edc9db0',NULL,'{"id":"b419e947-36b0-40fd-82c2-fc898edc9db0","measurement_id":"2e2130b6-d2e7-4378-a281-900183132d3b","number":2,"sag_mm":17.5,"settled_from":""}');
INSERT INTO "deed_row" VALUES('04e9bbd4-5e26-4029-9cb2-32210c6b8f50','sag_reading','cdca8c67-557e-406c-90b7-0c21bb452dc9',NULL,'{"id":"cdca8c67-557e-406c-90b7-0c21bb452dc9","measurement_id":"d9f2b97c-bd73-49ad-81ac-69e3148ace6d","number":2,"sag_mm":17.5,"settled_from":""}');
INSERT INTO "deed_row" VALUES('04e9bbd4-5e26-4029-9cb2-32210c6b8f50','sag_reading','e64c2df3-19b1-473e-8c90-aa02fa46e9cc',NULL,'{"id":"e64c2df3-19b1-473e-8c90-aa02fa46e9cc","measurement_id":"2e2130b6-d2e7-4378-a281-900183132d3b","number":1,"sag_mm":17.0,"settled_from":""}');
INSERT INTO "deed_row" VALUES('04e9bbd4-5e26-4029-9cb2-32210c6b8f50','sag_target','488d3c7a-ce99-4076-9d6a-a0d2bb3c1d1f',NULL,'{"id":"488d3c7a-ce99-4076-9d6a-a0d2bb3c1d1f","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","rider_id":"dab31048-9483-469f-9ff3-f4e393f8dd8d","unit_id":"07538be2-2ede-4623-aa87-d2af8deb6da3","target":0.28500000000000003,"low":0.27,"high":0.3,"origin":"common_practice","posture":"standing"}');
INSERT INTO "deed_row" VALUES('144bc0bc-d944-4a9a-b051-eed01dce6aa2','on_bike','97f53c0f-a363-428e-8c02-2378b7048c26',NULL,'{"id":"97f53c0f-a363-428e-8c02-2378b7048c26","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","at":"2031-05-14T09:00:13+00:00","sequence":15,"item":"tyre_pressure","subject_id":"f955690c-2083-41fc-8805-16082c1af193","value":160.0,"how":"as_attached","range_id":null,"temperature_c":null,"pump_id":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","deed_id":"144bc0bc-d944-4a9a-b051-eed01dce6aa2"}');
INSERT INTO "deed_row" VALUES('18dca7e6-9bb2-4a7e-a5b4-9c28793237da','check_item','3c3153f6-d5c6-418c-9034-08f46308806c','{"id":"3c3153f6-d5c6-418c-9034-08f46308806c","checkin_id":"b3312701-6029-481d-aa17-f8fe0f41710d","code":"exposed_front","severity":"advise","note":"","is_declined":0,"override_reason":"","reason":"","measured_mm":148.5,"overruled_by":null,"overruled_at":null,"closed_at":null,"closed_how":null,"photo_id":null}','{"id":"3c3153f6-d5c6-418c-9034-08f46308806c","checkin_id":"b3312701-6029-481d-aa17-f8fe0f41710d","code":"exposed_front","severity":"advise","note":"","is_declined":0,"override_reason":"","reason":"","measured_mm":148.5,"overruled_by":null,"overruled_at":null,"closed_at":"2031-06-02T09:00:10+00:00","closed_how":"seen to","photo_id":null}');
INSERT INTO "deed_row" VALUES('1eb5eff3-4603-4d90-9bfd-a7ef4df44728','on_bike','ca5cd48f-5fb8-4ee4-a3fc-608f061fe8ca',NULL,'{"id":"ca5cd48f-5fb8-4ee4-a3fc-608f061fe8ca","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","at":"2031-05-14T09:00:04+00:00","sequence":3,"item":"adjuster","subject_id":"b52a1cbe-d2e9-4bad-8feb-6c9ecb6ba19b","value":14.0,"how":"opened","range_id":"15b00ae5-1245-42e7-8ae3-91af49d7b889","temperature_c":null,"pump_id":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","deed_id":"1eb5eff3-4603-4d90-9bfd-a7ef4df44728"}');
INSERT INTO "deed_row" VALUES('1eb5eff3-4603-4d90-9bfd-a7ef4df44728','range_count','15b00ae5-1245-42e7-8ae3-91af49d7b889',NULL,'{"id":"15b00ae5-1245-42e7-8ae3-91af49d7b889","adjuster_id":"b52a1cbe-d2e9-4bad-8feb-6c9ecb6ba19b","generation_id":"86aca3de-2353-4343-8baf-802704181cb3","steps":14,"as_found":5,"counted_at":"2031-05-14T09:00:04+00:00","person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","note":""}');
INSERT INTO "deed_row" VALUES('2e153129-e6fd-4159-a032-051cf35de209','on_bike','db279a68-e140-4600-952a-941c4cebd9cc',NULL,'{"id":"db279a68-e140-4600-952a-941c4cebd9cc","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","at":"2031-05-14T09:00:10+00:00","sequence":12,"item":"adjuster","subject_id":"8a9ba067-cfff-4cfa-a64b-54805d005456","value":13.0,"how":"opened","range_id":"c463cfdf-b3c4-4a6e-8816-8f3b04e04b6e","temperature_c":null,"pump_id":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","deed_id":"2e153129-e6fd-4159-a032-051cf35de209"}');
INSERT INTO "deed_row" VALUES('2e153129-e6fd-4159-a032-051cf35de209','range_count','c463cfdf-b3c4-4a6e-8816-8f3b04e04b6e',NULL,'{"id":"c463cfdf-b3c4-4a6e-8816-8f3b04e04b6e","adjuster_id":"8a9ba067-cfff-4cfa-a64b-54805d005456","generation_id":"883972de-8f39-42ad-a8d1-f007e99664d8","steps":13,"as_found":7,"counted_at":"2031-05-14T09:00:10+00:00","person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","note":""}');
INSERT INTO "deed_row" VALUES('335d08d0-8fa6-4313-983f-31c9a5675188','on_bike','0ea1c9ed-256c-46e3-b661-11e3ddbc5b74',NULL,'{"id":"0ea1c9ed-256c-46e3-b661-11e3ddbc5b74","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","at":"2031-05-14T09:00:09+00:00","sequence":11,"item":"adjuster","subject_id":"8a9ba067-cfff-4cfa-a64b-54805d005456","value":0.0,"how":"closed","range_id":null,"temperature_c":null,"pump_id":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","deed_id":"335d08d0-8fa6-4313-983f-31c9a5675188"}');
INSERT INTO "deed_row" VALUES('335d08d0-8fa6-4313-983f-31c9a5675188','on_bike','a52929c8-424b-4b36-b19d-e3e4f6453fd4',NULL,'{"id":"a52929c8-424b-4b36-b19d-e3e4f6453fd4","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","at":"2031-05-14T09:00:09+00:00","sequence":10,"item":"adjuster","subject_id":"8a9ba067-cfff-4cfa-a64b-54805d005456","value":7.0,"how":"counted","range_id":null,"temperature_c":null,"pump_id":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","deed_id":"335d08d0-8fa6-4313-983f-31c9a5675188"}');
INSERT INTO "deed_row" VALUES('3719f9ac-1281-4b97-ba92-96d6ef5863c0','blind_plan','dc8409b6-7099-42c6-8ed1-bba48719d095',NULL,'{"id":"dc8409b6-7099-42c6-8ed1-bba48719d095","session_id":"7fedf9fc-3f87-40a1-bf17-e2b14cfdde1d","labels":"A|B","order":"ABBA","seed":7,"digest":"dddddddddddddddddddddddddddddddddddddddddddddddddddddddddddddddd","fixed_at":"2031-05-14T09:00:36+00:00","revealed_at":null}');
INSERT INTO "deed_row" VALUES('3719f9ac-1281-4b97-ba92-96d6ef5863c0','card_issue','34b31a20-f0cd-4ca9-9b87-37b461148d95',NULL,'{"id":"34b31a20-f0cd-4ca9-9b87-37b461148d95","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","rider_id":"dab31048-9483-469f-9ff3-f4e393f8dd8d","setup_id":"538659b5-c4f0-49e2-9cd6-fd72c6717edb","made_at":"2031-05-14T09:00:38+00:00","person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","note":""}');
INSERT INTO "deed_row" VALUES('3719f9ac-1281-4b97-ba92-96d6ef5863c0','check_in','db4e36e8-7de2-4672-a7ea-385a57b2454c',NULL,'{"id":"db4e36e8-7de2-4672-a7ea-385a57b2454c","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","made_at":"2031-05-14T09:00:32+00:00","depth":"quick","person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","note":""}');
INSERT INTO "deed_row" VALUES('3719f9ac-1281-4b97-ba92-96d6ef5863c0','check_item','abf2a62e-2ac7-4ec3-b80b-a9364b4f8c2a',NULL,'{"id":"abf2a62e-2ac7-4ec3-b80b-a9364b4f8c2a","checkin_id":"db4e36e8-7de2-4672-a7ea-385a57b2454c","code":"seals","severity":"attend","note":"weeps","is_declined":0,"override_reason":"","photo_id":"00db2a16-f60a-4a16-a517-d0aa2291b179"}');
INSERT INTO "deed_row" VALUES('3719f9ac-1281-4b97-ba92-96d6ef5863c0','overrule','9f3a3344-a4cb-43fc-ad5f-f52cb5aceccb',NULL,'{"id":"9f3a3344-a4cb-43fc-ad5f-f52cb5aceccb","session_id":"7fedf9fc-3f87-40a1-bf17-e2b14cfdde1d","adjuster_id":"51f68db9-74da-48f0-959e-25a4890b692b","proposed":6,"chosen":8,"at":"2031-05-14T09:00:35+00:00","reason":""}');
INSERT INTO "deed_row" VALUES('3719f9ac-1281-4b97-ba92-96d6ef5863c0','photo','00db2a16-f60a-4a16-a517-d0aa2291b179',NULL,'{"id":"00db2a16-f60a-4a16-a517-d0aa2291b179","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","sha256":"0000000000000000000000000000000000000000000000000000000000000000","name":"linkage.jpg","taken_at":"2031-05-14T09:00:31+00:00","note":""}');
INSERT INTO "deed_row" VALUES('3719f9ac-1281-4b97-ba92-96d6ef5863c0','pump','3b4e2b53-cc45-4b48-a933-23e6d54da99f',NULL,'{"id":"3b4e2b53-cc45-4b48-a933-23e6d54da99f","name":"Shop pump","kind":"suspension","division_kpa":7.0,"hose_note":"","archived_at":null}');
INSERT INTO "deed_row" VALUES('3719f9ac-1281-4b97-ba92-96d6ef5863c0','riding_hours','143cbc8d-7401-479d-8efd-d8063c4f77ad',NULL,'{"id":"143cbc8d-7401-479d-8efd-d8063c4f77ad","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","at":"2031-05-14T09:00:37+00:00","hours":12.5,"source":"stated"}');
INSERT INTO "deed_row" VALUES('3719f9ac-1281-4b97-ba92-96d6ef5863c0','run_rating','a1e09ca1-0daf-48fc-a25f-b4daed938f43',NULL,'{"id":"a1e09ca1-0daf-48fc-a25f-b4daed938f43","run_id":"15112a42-40ee-4e06-9292-43ffdad5cfc9","attribute":"grip","score":6,"end":"rear"}');
INSERT INTO "deed_row" VALUES('3719f9ac-1281-4b97-ba92-96d6ef5863c0','run_symptom','958ecbe6-4368-4ca2-a70c-db83046b0654',NULL,'{"id":"958ecbe6-4368-4ca2-a70c-db83046b0654","run_id":"15112a42-40ee-4e06-9292-43ffdad5cfc9","symptom":"packs","end":"rear"}');
INSERT INTO "deed_row" VALUES('3719f9ac-1281-4b97-ba92-96d6ef5863c0','service_part','72ab024c-b366-47ad-a1f2-be9a0f290a9b',NULL,'{"id":"72ab024c-b366-47ad-a1f2-be9a0f290a9b","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","part":"lowers","unit_id":"5f072154-220c-4f21-829a-aa5e3b446c7c","interval_hours":50.0,"interval_months":null,"last_hours":null,"last_at":null,"origin":"common_practice"}');
INSERT INTO "deed_row" VALUES('3719f9ac-1281-4b97-ba92-96d6ef5863c0','skip','f7051cea-a58a-4be0-ab03-093fc5c5309d',NULL,'{"id":"f7051cea-a58a-4be0-ab03-093fc5c5309d","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","station":"review","reason":"one run only","at":"2031-05-14T09:00:34+00:00","person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868"}');
INSERT INTO "deed_row" VALUES('3719f9ac-1281-4b97-ba92-96d6ef5863c0','spring','d42272e4-09a1-4e6c-b32d-0474714d65bd',NULL,'{"id":"d42272e4-09a1-4e6c-b32d-0474714d65bd","unit_id":"07538be2-2ede-4623-aa87-d2af8deb6da3","rate_n_per_mm":78.8,"stroke_mm":65.0,"label":"spare"}');
INSERT INTO "deed_row" VALUES('3719f9ac-1281-4b97-ba92-96d6ef5863c0','valve','61c2b0f6-0d8f-45e5-a5fe-53e51fa4fc2d',NULL,'{"id":"61c2b0f6-0d8f-45e5-a5fe-53e51fa4fc2d","unit_id":"07538be2-2ede-4623-aa87-d2af8deb6da3","purpose":"negative","place":"below the can","minimum_kpa":300.0,"maximum_kpa":1900.0}');
INSERT INTO "deed_row" VALUES('3f6e426e-5353-4790-95f5-e2819afe9bc2','adjuster','51f68db9-74da-48f0-959e-25a4890b692b',NULL,'{"id":"51f68db9-74da-48f0-959e-25a4890b692b","unit_id":"5f072154-220c-4f21-829a-aa5e3b446c7c","kind":"rebound","speed":"low","name":"","counting":"clicks","position_names":"","closed_turn":"unknown","counting_order":1,"depends_on":null,"chart_from":"closed","chart_steps":null,"note":"","archived_at":null}');
INSERT INTO "deed_row" VALUES('3f6e426e-5353-4790-95f5-e2819afe9bc2','adjuster','8a9ba067-cfff-4cfa-a64b-54805d005456',NULL,'{"id":"8a9ba067-cfff-4cfa-a64b-54805d005456","unit_id":"07538be2-2ede-4623-aa87-d2af8deb6da3","kind":"rebound","speed":"low","name":"","counting":"clicks","position_names":"","closed_turn":"unknown","counting_order":1,"depends_on":null,"chart_from":"closed","chart_steps":null,"note":"","archived_at":null}');
INSERT INTO "deed_row" VALUES('3f6e426e-5353-4790-95f5-e2819afe9bc2','adjuster','b52a1cbe-d2e9-4bad-8feb-6c9ecb6ba19b',NULL,'{"id":"b52a1cbe-d2e9-4bad-8feb-6c9ecb6ba19b","unit_id":"5f072154-220c-4f21-829a-aa5e3b446c7c","kind":"compression","speed":"low","name":"","counting":"clicks","position_names":"","closed_turn":"unknown","counting_order":0,"depends_on":null,"chart_from":"closed","chart_steps":null,"note":"","archived_at":null}');
INSERT INTO "deed_row" VALUES('3f6e426e-5353-4790-95f5-e2819afe9bc2','adjuster','c234b9b7-6e50-46ab-a99d-5860a5d99dec',NULL,'{"id":"c234b9b7-6e50-46ab-a99d-5860a5d99dec","unit_id":"07538be2-2ede-4623-aa87-d2af8deb6da3","kind":"compression","speed":"low","name":"","counting":"clicks","position_names":"","closed_turn":"unknown","counting_order":0,"depends_on":null,"chart_from":"closed","chart_steps":null,"note":"","archived_at":null}');
INSERT INTO "deed_row" VALUES('3f6e426e-5353-4790-95f5-e2819afe9bc2','bike','524af228-d00f-4d26-88f5-6e1aa34f039f',NULL,'{"id":"524af228-d00f-4d26-88f5-6e1aa34f039f","name":"Larch 150","layout":"air_air","discipline":"trail","is_ebike":0,"rear_travel_mm":145.0,"head_angle_deg":null,"wheelbase_mm":null,"bb_drop_mm":null,"tags":"","note":"","created_at":"2031-05-14T09:00:02+00:00","archived_at":null}');
INSERT INTO "deed_row" VALUES('3f6e426e-5353-4790-95f5-e2819afe9bc2','bike_rider','37d9cf81-99bc-4632-804a-02ee08e843fd',NULL,'{"id":"37d9cf81-99bc-4632-804a-02ee08e843fd","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","person_id":"dab31048-9483-469f-9ff3-f4e393f8dd8d","is_main":1}');
INSERT INTO "deed_row" VALUES('3f6e426e-5353-4790-95f5-e2819afe9bc2','generation','86aca3de-2353-4343-8baf-802704181cb3',NULL,'{"id":"86aca3de-2353-4343-8baf-802704181cb3","unit_id":"5f072154-220c-4f21-829a-aa5e3b446c7c","number":1,"reason":"new","started_at":"2031-05-14T09:00:02+00:00","note":""}');
INSERT INTO "deed_row" VALUES('3f6e426e-5353-4790-95f5-e2819afe9bc2','generation','883972de-8f39-42ad-a8d1-f007e99664d8',NULL,'{"id":"883972de-8f39-42ad-a8d1-f007e99664d8","unit_id":"07538be2-2ede-4623-aa87-d2af8deb6da3","number":1,"reason":"new","started_at":"2031-05-14T09:00:02+00:00","note":""}');
INSERT INTO "deed_row" VALUES('3f6e426e-5353-4790-95f5-e2819afe9bc2','person','dab31048-9483-469f-9ff3-f4e393f8dd8d',NULL,'{"id":"dab31048-9483-469f-9ff3-f4e393f8dd8d","name":"M. Anders","rides":1,"works_here":0,"is_child":0,"mass_kg":84.5,"pressure_unit":"psi","length_unit":"mm","mass_unit":"kg","rate_unit":"lbf/in","temperature_unit":"degC","note":"","created_at":"2031-05-14T09:00:02+00:00","archived_at":null}');
INSERT INTO "deed_row" VALUES('3f6e426e-5353-4790-95f5-e2819afe9bc2','tyre','9325b38e-cb13-40ac-abe9-fb484d333031',NULL,'{"id":"9325b38e-cb13-40ac-abe9-fb484d333031","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","end":"rear","name":"","width_mm":null,"is_tubeless":1,"has_insert":0,"minimum_kpa":null,"maximum_kpa":null}');
INSERT INTO "deed_row" VALUES('3f6e426e-5353-4790-95f5-e2819afe9bc2','tyre','f955690c-2083-41fc-8805-16082c1af193',NULL,'{"id":"f955690c-2083-41fc-8805-16082c1af193","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","end":"front","name":"","width_mm":null,"is_tubeless":1,"has_insert":0,"minimum_kpa":null,"maximum_kpa":null}');
INSERT INTO "deed_row" VALUES('3f6e426e-5353-4790-95f5-e2819afe9bc2','unit','07538be2-2ede-4623-aa87-d2af8deb6da3',NULL,'{"id":"07538be2-2ede-4623-aa87-d2af8deb6da3","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","end":"rear","kind":"shock","name":"","spring":"air","travel_mm":60.0,"minimum_kpa":null,"maximum_kpa":null,"negative":"self","has_second_positive":0,"second_minimum_kpa":null,"second_maximum_kpa":null,"spacer_volume_mm3":null,"spacer_limit":null,"area_mm2":null,"positive_mm3":null,"negative_mm3":null,"spring_stroke_mm":null,"preload_limit_mm":null,"preload_pitch_mm":null,"maker_sag_low":null,"maker_sag_high":null,"maker_posture":"","maker_table":"","is_dual_crown":0,"is_inverted":0,"damper_in_one_leg":0,"exposed_nominal_mm":null,"serial":"","note":""}');
INSERT INTO "deed_row" VALUES('3f6e426e-5353-4790-95f5-e2819afe9bc2','unit','5f072154-220c-4f21-829a-aa5e3b446c7c',NULL,'{"id":"5f072154-220c-4f21-829a-aa5e3b446c7c","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","end":"front","kind":"fork","name":"","spring":"air","travel_mm":150.0,"minimum_kpa":null,"maximum_kpa":null,"negative":"self","has_second_positive":0,"second_minimum_kpa":null,"second_maximum_kpa":null,"spacer_volume_mm3":null,"spacer_limit":null,"area_mm2":null,"positive_mm3":null,"negative_mm3":null,"spring_stroke_mm":null,"preload_limit_mm":null,"preload_pitch_mm":null,"maker_sag_low":null,"maker_sag_high":null,"maker_posture":"","maker_table":"","is_dual_crown":0,"is_inverted":0,"damper_in_one_leg":0,"exposed_nominal_mm":null,"serial":"","note":""}');
INSERT INTO "deed_row" VALUES('4544e0b4-2d4a-4a24-b77e-ab0ac0017de0','session','7fedf9fc-3f87-40a1-bf17-e2b14cfdde1d',NULL,'{"id":"7fedf9fc-3f87-40a1-bf17-e2b14cfdde1d","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","rider_id":"dab31048-9483-469f-9ff3-f4e393f8dd8d","course_id":"28a2718d-9ace-48a3-a926-9bc8197ab608","started_at":"2031-05-14T09:00:29+00:00","surface":"dry","temperature_c":null,"start_setup_id":"538659b5-c4f0-49e2-9cd6-fd72c6717edb","verified_at":"2031-05-14T09:00:28+00:00","not_verified_reason":"","response":"liking","planned_runs":null,"is_blind":0,"ended_at":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","note":""}');
INSERT INTO "deed_row" VALUES('4bb3747e-2182-4cc7-b6b6-5e08495e34fd','sag_measurement','2e2130b6-d2e7-4378-a281-900183132d3b','{"id":"2e2130b6-d2e7-4378-a281-900183132d3b","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","rider_id":"dab31048-9483-469f-9ff3-f4e393f8dd8d","unit_id":"07538be2-2ede-4623-aa87-d2af8deb6da3","measured_at":"2031-05-14T09:00:20+00:00","posture":"standing","travel_mm":60.0,"sag_mm":17.0,"spread_mm":0.5,"target":0.28500000000000003,"target_low":0.27,"target_high":0.3,"target_origin":"common_practice","is_kept":0,"method":"helper","generation_id":"883972de-8f39-42ad-a8d1-f007e99664d8","pressure_kpa":1178.0,"pressure_how":"as_pumped","second_kpa":null,"negative_kpa":null,"rate_n_per_mm":null,"preload_mm":null,"spacers":1,"temperature_c":20.0,"rider_mass_kg":84.5,"pump_id":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","note":""}','{"id":"2e2130b6-d2e7-4378-a281-900183132d3b","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","rider_id":"dab31048-9483-469f-9ff3-f4e393f8dd8d","unit_id":"07538be2-2ede-4623-aa87-d2af8deb6da3","measured_at":"2031-05-14T09:00:20+00:00","posture":"standing","travel_mm":60.0,"sag_mm":17.0,"spread_mm":0.5,"target":0.28500000000000003,"target_low":0.27,"target_high":0.3,"target_origin":"common_practice","is_kept":0,"method":"helper","generation_id":"883972de-8f39-42ad-a8d1-f007e99664d8","pressure_kpa":1178.0,"pressure_how":"as_pumped","second_kpa":null,"negative_kpa":500.0,"rate_n_per_mm":null,"preload_mm":null,"spacers":1,"temperature_c":20.0,"rider_mass_kg":84.5,"pump_id":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","note":""}');
INSERT INTO "deed_row" VALUES('52e08ec2-474b-4752-af16-01bd1150c476','bike','05c924d3-f7b7-4656-8065-36368bff3102','{"id":"05c924d3-f7b7-4656-8065-36368bff3102","name":"Birch (template)","layout":"air_air","discipline":"trail","is_ebike":0,"rear_travel_mm":145.0,"head_angle_deg":null,"wheelbase_mm":null,"bb_drop_mm":null,"tags":"","note":"Fährt; <b>quoted</b> ''twice'' — ½ turn","created_at":"2031-06-02T09:00:11+00:00","template_at":"2031-06-02T09:00:11+00:00","archived_at":null}','{"id":"05c924d3-f7b7-4656-8065-36368bff3102","name":"Birch (template)","layout":"air_air","discipline":"trail","is_ebike":0,"rear_travel_mm":145.0,"head_angle_deg":null,"wheelbase_mm":null,"bb_drop_mm":null,"tags":"shop","note":"Fährt; <b>quoted</b> ''twice'' — ½ turn","created_at":"2031-06-02T09:00:11+00:00","template_at":"2031-06-02T09:00:11+00:00","archived_at":null}');
INSERT INTO "deed_row" VALUES('548fe1f8-dbe8-45c6-bf85-937fb68a820b','on_bike','4aaedee2-85a8-4f60-8899-472bd578502b',NULL,'{"id":"4aaedee2-85a8-4f60-8899-472bd578502b","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","at":"2031-05-14T09:00:07+00:00","sequence":7,"item":"adjuster","subject_id":"c234b9b7-6e50-46ab-a99d-5860a5d99dec","value":4.0,"how":"counted","range_id":null,"temperature_c":null,"pump_id":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","deed_id":"548fe1f8-dbe8-45c6-bf85-937fb68a820b"}');
INSERT INTO "deed_row" VALUES('548fe1f8-dbe8-45c6-bf85-937fb68a820b','on_bike','742e2d3a-ccda-4605-9842-4d78bd72ab85',NULL,'{"id":"742e2d3a-ccda-4605-9842-4d78bd72ab85","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","at":"2031-05-14T09:00:07+00:00","sequence":8,"item":"adjuster","subject_id":"c234b9b7-6e50-46ab-a99d-5860a5d99dec","value":0.0,"how":"closed","range_id":null,"temperature_c":null,"pump_id":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","deed_id":"548fe1f8-dbe8-45c6-bf85-937fb68a820b"}');
INSERT INTO "deed_row" VALUES('625fa5da-f32c-4c7b-b442-bb667c792199','bike','524af228-d00f-4d26-88f5-6e1aa34f039f','{"id":"524af228-d00f-4d26-88f5-6e1aa34f039f","name":"Larch 150","layout":"air_air","discipline":"trail","is_ebike":0,"rear_travel_mm":145.0,"head_angle_deg":null,"wheelbase_mm":null,"bb_drop_mm":null,"tags":"","note":"Fährt; <b>quoted</b> ''twice'' — ½ turn","created_at":"2031-05-14T09:00:02+00:00","archived_at":null}','{"id":"524af228-d00f-4d26-88f5-6e1aa34f039f","name":"Larch 160","layout":"air_air","discipline":"trail","is_ebike":0,"rear_travel_mm":145.0,"head_angle_deg":null,"wheelbase_mm":null,"bb_drop_mm":null,"tags":"","note":"Fährt; <b>quoted</b> ''twice'' — ½ turn","created_at":"2031-05-14T09:00:02+00:00","archived_at":null}');
INSERT INTO "deed_row" VALUES('64b585e8-c60e-4a54-bf32-2ee51023a4af','adjuster','1068e49e-3de8-44ec-b129-8d2f9be3ddf0',NULL,'{"id":"1068e49e-3de8-44ec-b129-8d2f9be3ddf0","unit_id":"00e69ff0-af45-4ac1-a5ad-c1138a7fc66e","kind":"compression","speed":"low","name":"","counting":"clicks","position_names":"","closed_turn":"unknown","counting_order":0,"depends_on":null,"depends_how":null,"depends_position":null,"chart_from":"closed","chart_steps":null,"note":"","archived_at":null}');
INSERT INTO "deed_row" VALUES('64b585e8-c60e-4a54-bf32-2ee51023a4af','adjuster','33498a58-bb30-4324-a4ab-6d1ebc803dc5',NULL,'{"id":"33498a58-bb30-4324-a4ab-6d1ebc803dc5","unit_id":"2261a01d-190f-46b7-b9fd-61c596fe8893","kind":"rebound","speed":"low","name":"","counting":"clicks","position_names":"","closed_turn":"unknown","counting_order":1,"depends_on":"584c5f83-cb80-49e5-9281-762365f02fa2","depends_how":"drags","depends_position":2,"chart_from":"closed","chart_steps":null,"note":"","archived_at":null}');
INSERT INTO "deed_row" VALUES('64b585e8-c60e-4a54-bf32-2ee51023a4af','adjuster','584c5f83-cb80-49e5-9281-762365f02fa2',NULL,'{"id":"584c5f83-cb80-49e5-9281-762365f02fa2","unit_id":"2261a01d-190f-46b7-b9fd-61c596fe8893","kind":"compression","speed":"low","name":"","counting":"clicks","position_names":"","closed_turn":"unknown","counting_order":0,"depends_on":null,"depends_how":null,"depends_position":null,"chart_from":"closed","chart_steps":null,"note":"","archived_at":null}');
INSERT INTO "deed_row" VALUES('64b585e8-c60e-4a54-bf32-2ee51023a4af','adjuster','7dc58f81-a3ee-4207-9584-91ff76a72c94',NULL,'{"id":"7dc58f81-a3ee-4207-9584-91ff76a72c94","unit_id":"00e69ff0-af45-4ac1-a5ad-c1138a7fc66e","kind":"rebound","speed":"low","name":"","counting":"clicks","position_names":"","closed_turn":"unknown","counting_order":1,"depends_on":null,"depends_how":null,"depends_position":null,"chart_from":"closed","chart_steps":null,"note":"","archived_at":null}');
INSERT INTO "deed_row" VALUES('64b585e8-c60e-4a54-bf32-2ee51023a4af','bike','05c924d3-f7b7-4656-8065-36368bff3102',NULL,'{"id":"05c924d3-f7b7-4656-8065-36368bff3102","name":"Birch (template)","layout":"air_air","discipline":"trail","is_ebike":0,"rear_travel_mm":145.0,"head_angle_deg":null,"wheelbase_mm":null,"bb_drop_mm":null,"tags":"","note":"Fährt; <b>quoted</b> ''twice'' — ½ turn","created_at":"2031-06-02T09:00:11+00:00","template_at":"2031-06-02T09:00:11+00:00","archived_at":null}');
INSERT INTO "deed_row" VALUES('64b585e8-c60e-4a54-bf32-2ee51023a4af','generation','0dbfd073-32dd-4988-aea0-1850163368f8',NULL,'{"id":"0dbfd073-32dd-4988-aea0-1850163368f8","unit_id":"00e69ff0-af45-4ac1-a5ad-c1138a7fc66e","number":1,"reason":"new","started_at":"2031-06-02T09:00:11+00:00","note":""}');
INSERT INTO "deed_row" VALUES('64b585e8-c60e-4a54-bf32-2ee51023a4af','generation','a45a16f3-2c48-4c44-9451-2d5de380f1ab',NULL,'{"id":"a45a16f3-2c48-4c44-9451-2d5de380f1ab","unit_id":"2261a01d-190f-46b7-b9fd-61c596fe8893","number":1,"reason":"new","started_at":"2031-06-02T09:00:11+00:00","note":""}');
INSERT INTO "deed_row" VALUES('64b585e8-c60e-4a54-bf32-2ee51023a4af','spring','d3e529a8-12ba-41e3-8c6a-e629d95c6ec5',NULL,'{"id":"d3e529a8-12ba-41e3-8c6a-e629d95c6ec5","unit_id":"00e69ff0-af45-4ac1-a5ad-c1138a7fc66e","rate_n_per_mm":78.8,"stroke_mm":65.0,"label":"spare","how":"pressed","curve":"[[0.0, 0.0], [10.0, 800.0], [20.0, 1700.0]]"}');
INSERT INTO "deed_row" VALUES('64b585e8-c60e-4a54-bf32-2ee51023a4af','tyre','0a8e630d-910a-4972-91b1-8126f644b0fc',NULL,'{"id":"0a8e630d-910a-4972-91b1-8126f644b0fc","bike_id":"05c924d3-f7b7-4656-8065-36368bff3102","end":"rear","name":"","width_mm":null,"is_tubeless":1,"has_insert":0,"minimum_kpa":null,"maximum_kpa":null}');
INSERT INTO "deed_row" VALUES('64b585e8-c60e-4a54-bf32-2ee51023a4af','tyre','c60a2b8d-dbab-4163-a5be-980c8c68fa15',NULL,'{"id":"c60a2b8d-dbab-4163-a5be-980c8c68fa15","bike_id":"05c924d3-f7b7-4656-8065-36368bff3102","end":"front","name":"","width_mm":null,"is_tubeless":1,"has_insert":0,"minimum_kpa":null,"maximum_kpa":null}');
INSERT INTO "deed_row" VALUES('64b585e8-c60e-4a54-bf32-2ee51023a4af','unit','00e69ff0-af45-4ac1-a5ad-c1138a7fc66e',NULL,'{"id":"00e69ff0-af45-4ac1-a5ad-c1138a7fc66e","bike_id":"05c924d3-f7b7-4656-8065-36368bff3102","end":"rear","kind":"shock","name":"","spring":"air","travel_mm":60.0,"minimum_kpa":null,"maximum_kpa":null,"negative":"self","has_second_positive":0,"second_minimum_kpa":null,"second_maximum_kpa":null,"fill_order":null,"spacer_volume_mm3":null,"spacer_limit":null,"area_mm2":1450.0,"positive_mm3":null,"negative_mm3":null,"spring_stroke_mm":null,"preload_limit_mm":null,"preload_pitch_mm":null,"maker_sag_low":null,"maker_sag_high":null,"maker_posture":"","maker_table":"","is_dual_crown":0,"is_inverted":0,"damper_in_one_leg":0,"exposed_nominal_mm":null,"eye_to_eye_mm":205.0,"mounting":"rear hole","serial":"","note":""}');
INSERT INTO "deed_row" VALUES('64b585e8-c60e-4a54-bf32-2ee51023a4af','unit','2261a01d-190f-46b7-b9fd-61c596fe8893',NULL,'{"id":"2261a01d-190f-46b7-b9fd-61c596fe8893","bike_id":"05c924d3-f7b7-4656-8065-36368bff3102","end":"front","kind":"fork","name":"","spring":"air","travel_mm":150.0,"minimum_kpa":null,"maximum_kpa":null,"negative":"self","has_second_positive":0,"second_minimum_kpa":null,"second_maximum_kpa":null,"fill_order":"second_first","spacer_volume_mm3":null,"spacer_limit":null,"area_mm2":null,"positive_mm3":null,"negative_mm3":null,"spring_stroke_mm":null,"preload_limit_mm":null,"preload_pitch_mm":null,"maker_sag_low":null,"maker_sag_high":null,"maker_posture":"","maker_table":"","is_dual_crown":0,"is_inverted":0,"damper_in_one_leg":0,"exposed_nominal_mm":null,"eye_to_eye_mm":null,"mounting":null,"serial":"","note":""}');
INSERT INTO "deed_row" VALUES('64b585e8-c60e-4a54-bf32-2ee51023a4af','valve','34e34c2c-830c-4278-a581-ac2caa75cfb3',NULL,'{"id":"34e34c2c-830c-4278-a581-ac2caa75cfb3","unit_id":"00e69ff0-af45-4ac1-a5ad-c1138a7fc66e","purpose":"negative","place":"below the can","minimum_kpa":300.0,"maximum_kpa":1900.0}');
INSERT INTO "deed_row" VALUES('7082bb3f-29d1-4309-b38a-27c356157f9b','run','15112a42-40ee-4e06-9292-43ffdad5cfc9',NULL,'{"id":"15112a42-40ee-4e06-9292-43ffdad5cfc9","session_id":"7fedf9fc-3f87-40a1-bf17-e2b14cfdde1d","number":1,"setup_id":"538659b5-c4f0-49e2-9cd6-fd72c6717edb","ridden_at":"2031-05-14T09:00:30+00:00","typed_at":"2031-05-14T09:00:30+00:00","is_warmup":0,"is_confounded":0,"is_blind":0,"is_set_aside":0,"set_aside_reason":"","liking":6,"direction":1,"direction_of":"51f68db9-74da-48f0-959e-25a4890b692b","compared":null,"travel_front_mm":null,"travel_rear_mm":null,"bottom_outs_front":null,"bottom_outs_rear":null,"lap_s":null,"lever":"","guess":"","note":"dusty","person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868"}');
INSERT INTO "deed_row" VALUES('79195831-36c3-42fe-92d0-4fd485a1a43e','check_item','b277a4ec-65c8-47b0-930c-b0167db907a0','{"id":"b277a4ec-65c8-47b0-930c-b0167db907a0","checkin_id":"b3312701-6029-481d-aa17-f8fe0f41710d","code":"wheels","severity":"stop","note":"","is_declined":0,"override_reason":"","reason":"Spoke broken","measured_mm":null,"overruled_by":null,"overruled_at":null,"closed_at":null,"closed_how":null,"photo_id":null}','{"id":"b277a4ec-65c8-47b0-930c-b0167db907a0","checkin_id":"b3312701-6029-481d-aa17-f8fe0f41710d","code":"wheels","severity":"stop","note":"","is_declined":0,"override_reason":"Only pushed and rolled","reason":"Spoke broken","measured_mm":null,"overruled_by":"B. Halloran","overruled_at":"2031-06-02T09:00:08+00:00","closed_at":null,"closed_how":null,"photo_id":null}');
INSERT INTO "deed_row" VALUES('7ebacefb-e833-4e45-af2e-ec04a1fc1246','on_bike','692e60bb-3564-4afa-b35c-114b50270101',NULL,'{"id":"692e60bb-3564-4afa-b35c-114b50270101","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","at":"2031-05-14T09:00:03+00:00","sequence":2,"item":"adjuster","subject_id":"b52a1cbe-d2e9-4bad-8feb-6c9ecb6ba19b","value":0.0,"how":"closed","range_id":null,"temperature_c":null,"pump_id":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","deed_id":"7ebacefb-e833-4e45-af2e-ec04a1fc1246"}');
INSERT INTO "deed_row" VALUES('7ebacefb-e833-4e45-af2e-ec04a1fc1246','on_bike','c8f018e3-bf20-4b32-b32d-cb7f25962ec8',NULL,'{"id":"c8f018e3-bf20-4b32-b32d-cb7f25962ec8","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","at":"2031-05-14T09:00:03+00:00","sequence":1,"item":"adjuster","subject_id":"b52a1cbe-d2e9-4bad-8feb-6c9ecb6ba19b","value":5.0,"how":"counted","range_id":null,"temperature_c":null,"pump_id":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","deed_id":"7ebacefb-e833-4e45-af2e-ec04a1fc1246"}');
INSERT INTO "deed_row" VALUES('8280fc82-209c-4f73-9776-b17a89894b9e','leverage_point','3a73ccb1-a2f4-42bc-8936-e5d130a8273f',NULL,'{"id":"3a73ccb1-a2f4-42bc-8936-e5d130a8273f","survey_id":"98105dcf-3491-4bbe-81dc-f8b5b148ab4d","stroke_mm":0.0,"wheel_mm":0.0}');
INSERT INTO "deed_row" VALUES('8280fc82-209c-4f73-9776-b17a89894b9e','leverage_point','71cbe327-41e7-4a00-8d47-e7ab59224d30',NULL,'{"id":"71cbe327-41e7-4a00-8d47-e7ab59224d30","survey_id":"98105dcf-3491-4bbe-81dc-f8b5b148ab4d","stroke_mm":40.0,"wheel_mm":101.0}');
INSERT INTO "deed_row" VALUES('8280fc82-209c-4f73-9776-b17a89894b9e','leverage_point','ce57b954-3c26-4763-ba2c-cfb8528d7dae',NULL,'{"id":"ce57b954-3c26-4763-ba2c-cfb8528d7dae","survey_id":"98105dcf-3491-4bbe-81dc-f8b5b148ab4d","stroke_mm":60.0,"wheel_mm":145.0}');
INSERT INTO "deed_row" VALUES('8280fc82-209c-4f73-9776-b17a89894b9e','leverage_point','d5c36ed5-a330-4c2e-894d-16efa37f8b1c',NULL,'{"id":"d5c36ed5-a330-4c2e-894d-16efa37f8b1c","survey_id":"98105dcf-3491-4bbe-81dc-f8b5b148ab4d","stroke_mm":20.0,"wheel_mm":52.0}');
INSERT INTO "deed_row" VALUES('8280fc82-209c-4f73-9776-b17a89894b9e','leverage_survey','98105dcf-3491-4bbe-81dc-f8b5b148ab4d',NULL,'{"id":"98105dcf-3491-4bbe-81dc-f8b5b148ab4d","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","unit_id":"07538be2-2ede-4623-aa87-d2af8deb6da3","mounting":"long","reading_sd_mm":1.0,"made_at":"2031-05-14T09:00:24+00:00"}');
INSERT INTO "deed_row" VALUES('839a7975-2b6b-4903-9623-df07b92078cf','setup','538659b5-c4f0-49e2-9cd6-fd72c6717edb',NULL,'{"id":"538659b5-c4f0-49e2-9cd6-fd72c6717edb","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","rider_id":"dab31048-9483-469f-9ff3-f4e393f8dd8d","number":1,"origin":"baseline","made_at":"2031-05-14T09:00:25+00:00","name":"","parent_id":null,"is_confounded":0,"temperature_c":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","note":""}');
INSERT INTO "deed_row" VALUES('839a7975-2b6b-4903-9623-df07b92078cf','setup_value','4a0e182c-8c9f-462d-a515-550d646746af',NULL,'{"id":"4a0e182c-8c9f-462d-a515-550d646746af","setup_id":"538659b5-c4f0-49e2-9cd6-fd72c6717edb","item":"pressure","subject_id":"5f072154-220c-4f21-829a-aa5e3b446c7c","value":520.0,"how":"set_to","range_id":null,"temperature_c":20.0}');
INSERT INTO "deed_row" VALUES('839a7975-2b6b-4903-9623-df07b92078cf','setup_value','7c833ee6-a2d2-4d03-8d0b-0d9d787edecc',NULL,'{"id":"7c833ee6-a2d2-4d03-8d0b-0d9d787edecc","setup_id":"538659b5-c4f0-49e2-9cd6-fd72c6717edb","item":"adjuster","subject_id":"b52a1cbe-d2e9-4bad-8feb-6c9ecb6ba19b","value":5.0,"how":"set_to","range_id":"15b00ae5-1245-42e7-8ae3-91af49d7b889","temperature_c":null}');
INSERT INTO "deed_row" VALUES('839a7975-2b6b-4903-9623-df07b92078cf','setup_value','8935ce91-7d0b-4490-8c4b-4ed931f80434',NULL,'{"id":"8935ce91-7d0b-4490-8c4b-4ed931f80434","setup_id":"538659b5-c4f0-49e2-9cd6-fd72c6717edb","item":"tyre_pressure","subject_id":"f955690c-2083-41fc-8805-16082c1af193","value":160.0,"how":"set_to","range_id":null,"temperature_c":null}');
INSERT INTO "deed_row" VALUES('839a7975-2b6b-4903-9623-df07b92078cf','setup_value','97026043-1841-4880-bc5a-9f82b825d662',NULL,'{"id":"97026043-1841-4880-bc5a-9f82b825d662","setup_id":"538659b5-c4f0-49e2-9cd6-fd72c6717edb","item":"adjuster","subject_id":"8a9ba067-cfff-4cfa-a64b-54805d005456","value":7.0,"how":"set_to","range_id":"c463cfdf-b3c4-4a6e-8816-8f3b04e04b6e","temperature_c":null}');
INSERT INTO "deed_row" VALUES('839a7975-2b6b-4903-9623-df07b92078cf','setup_value','a8378c27-6899-437d-8094-1c2bd3209cdc',NULL,'{"id":"a8378c27-6899-437d-8094-1c2bd3209cdc","setup_id":"538659b5-c4f0-49e2-9cd6-fd72c6717edb","item":"spacers","subject_id":"07538be2-2ede-4623-aa87-d2af8deb6da3","value":1.0,"how":"set_to","range_id":null,"temperature_c":null}');
INSERT INTO "deed_row" VALUES('839a7975-2b6b-4903-9623-df07b92078cf','setup_value','b6c693f9-ef4c-4b46-9b51-7df26e35a2cd',NULL,'{"id":"b6c693f9-ef4c-4b46-9b51-7df26e35a2cd","setup_id":"538659b5-c4f0-49e2-9cd6-fd72c6717edb","item":"tyre_pressure","subject_id":"9325b38e-cb13-40ac-abe9-fb484d333031","value":160.0,"how":"set_to","range_id":null,"temperature_c":null}');
INSERT INTO "deed_row" VALUES('839a7975-2b6b-4903-9623-df07b92078cf','setup_value','e353a230-d829-4ea1-9fad-109afb4e91bd',NULL,'{"id":"e353a230-d829-4ea1-9fad-109afb4e91bd","setup_id":"538659b5-c4f0-49e2-9cd6-fd72c6717edb","item":"pressure","subject_id":"07538be2-2ede-4623-aa87-d2af8deb6da3","value":1240.0,"how":"set_to","range_id":null,"temperature_c":20.0}');
INSERT INTO "deed_row" VALUES('839a7975-2b6b-4903-9623-df07b92078cf','setup_value','f737bd9f-f243-4a03-9a6e-acb78e89e32d',NULL,'{"id":"f737bd9f-f243-4a03-9a6e-acb78e89e32d","setup_id":"538659b5-c4f0-49e2-9cd6-fd72c6717edb","item":"adjuster","subject_id":"c234b9b7-6e50-46ab-a99d-5860a5d99dec","value":4.0,"how":"set_to","range_id":"e3c556c9-3587-4f38-a6af-00ea7db243b2","temperature_c":null}');
INSERT INTO "deed_row" VALUES('839a7975-2b6b-4903-9623-df07b92078cf','setup_value','f7844437-3d54-4b82-a319-e8989f68750e',NULL,'{"id":"f7844437-3d54-4b82-a319-e8989f68750e","setup_id":"538659b5-c4f0-49e2-9cd6-fd72c6717edb","item":"spacers","subject_id":"5f072154-220c-4f21-829a-aa5e3b446c7c","value":1.0,"how":"set_to","range_id":null,"temperature_c":null}');
INSERT INTO "deed_row" VALUES('839a7975-2b6b-4903-9623-df07b92078cf','setup_value','fad1fd67-3ea3-4566-a1c1-b04b0adb7202',NULL,'{"id":"fad1fd67-3ea3-4566-a1c1-b04b0adb7202","setup_id":"538659b5-c4f0-49e2-9cd6-fd72c6717edb","item":"adjuster","subject_id":"51f68db9-74da-48f0-959e-25a4890b692b","value":6.0,"how":"set_to","range_id":"f5421ab8-af2a-4c5b-94fa-0a2836e8da25","temperature_c":null}');
INSERT INTO "deed_row" VALUES('8596eb9c-bf76-423e-ba24-e14626f3e74d','check_in','b3312701-6029-481d-aa17-f8fe0f41710d',NULL,'{"id":"b3312701-6029-481d-aa17-f8fe0f41710d","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","made_at":"2031-06-02T09:00:07+00:00","depth":"quick","person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","bothers":"Knocks","last_done":"New pads","note":""}');
INSERT INTO "deed_row" VALUES('8596eb9c-bf76-423e-ba24-e14626f3e74d','check_item','3c3153f6-d5c6-418c-9034-08f46308806c',NULL,'{"id":"3c3153f6-d5c6-418c-9034-08f46308806c","checkin_id":"b3312701-6029-481d-aa17-f8fe0f41710d","code":"exposed_front","severity":"advise","note":"","is_declined":0,"override_reason":"","reason":"","measured_mm":148.5,"overruled_by":null,"overruled_at":null,"closed_at":null,"closed_how":null,"photo_id":null}');
INSERT INTO "deed_row" VALUES('8596eb9c-bf76-423e-ba24-e14626f3e74d','check_item','b277a4ec-65c8-47b0-930c-b0167db907a0',NULL,'{"id":"b277a4ec-65c8-47b0-930c-b0167db907a0","checkin_id":"b3312701-6029-481d-aa17-f8fe0f41710d","code":"wheels","severity":"stop","note":"","is_declined":0,"override_reason":"","reason":"Spoke broken","measured_mm":null,"overruled_by":null,"overruled_at":null,"closed_at":null,"closed_how":null,"photo_id":null}');
INSERT INTO "deed_row" VALUES('8596eb9c-bf76-423e-ba24-e14626f3e74d','check_item','ee4b009f-e7ea-4fd5-a2b9-74d62896586e',NULL,'{"id":"ee4b009f-e7ea-4fd5-a2b9-74d62896586e","checkin_id":"b3312701-6029-481d-aa17-f8fe0f41710d","code":"headset","severity":"fine","note":"","is_declined":0,"override_reason":"","reason":"","measured_mm":null,"overruled_by":null,"overruled_at":null,"closed_at":null,"closed_how":null,"photo_id":null}');
INSERT INTO "deed_row" VALUES('8596eb9c-bf76-423e-ba24-e14626f3e74d','check_item','f27e1fb3-1b00-4aa6-8da1-c675cbc705d5',NULL,'{"id":"f27e1fb3-1b00-4aa6-8da1-c675cbc705d5","checkin_id":"b3312701-6029-481d-aa17-f8fe0f41710d","code":"frame","severity":"attend","note":"near the weld","is_declined":0,"override_reason":"","reason":"Marks","measured_mm":null,"overruled_by":null,"overruled_at":null,"closed_at":null,"closed_how":null,"photo_id":"0b23fe11-7daf-49d9-8530-76a15603a115"}');
INSERT INTO "deed_row" VALUES('8596eb9c-bf76-423e-ba24-e14626f3e74d','photo','0b23fe11-7daf-49d9-8530-76a15603a115',NULL,'{"id":"0b23fe11-7daf-49d9-8530-76a15603a115","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","sha256":"0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f","name":"crown.jpg","taken_at":"2031-06-02T09:00:07+00:00","note":""}');
INSERT INTO "deed_row" VALUES('9ccab47e-4007-4501-b5ca-6c7c47e2262c','adjuster','51f68db9-74da-48f0-959e-25a4890b692b','{"id":"51f68db9-74da-48f0-959e-25a4890b692b","unit_id":"5f072154-220c-4f21-829a-aa5e3b446c7c","kind":"rebound","speed":"low","name":"","counting":"clicks","position_names":"","closed_turn":"unknown","counting_order":1,"depends_on":null,"depends_how":null,"depends_position":null,"chart_from":"closed","chart_steps":null,"note":"","archived_at":null}','{"id":"51f68db9-74da-48f0-959e-25a4890b692b","unit_id":"5f072154-220c-4f21-829a-aa5e3b446c7c","kind":"rebound","speed":"low","name":"","counting":"clicks","position_names":"","closed_turn":"unknown","counting_order":1,"depends_on":"b52a1cbe-d2e9-4bad-8feb-6c9ecb6ba19b","depends_how":"drags","depends_position":2,"chart_from":"closed","chart_steps":null,"note":"","archived_at":null}');
INSERT INTO "deed_row" VALUES('a2bb41ec-78cc-4001-a54a-d06467293633','on_bike','2818bb54-4628-4774-9d06-58bfa325a806',NULL,'{"id":"2818bb54-4628-4774-9d06-58bfa325a806","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","at":"2031-05-14T09:00:12+00:00","sequence":14,"item":"pressure","subject_id":"07538be2-2ede-4623-aa87-d2af8deb6da3","value":1240.0,"how":"as_attached","range_id":null,"temperature_c":null,"pump_id":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","deed_id":"a2bb41ec-78cc-4001-a54a-d06467293633"}');
INSERT INTO "deed_row" VALUES('a3d59757-fb2c-4b32-a915-aae3be1db5da','unit','07538be2-2ede-4623-aa87-d2af8deb6da3','{"id":"07538be2-2ede-4623-aa87-d2af8deb6da3","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","end":"rear","kind":"shock","name":"","spring":"air","travel_mm":60.0,"minimum_kpa":null,"maximum_kpa":null,"negative":"self","has_second_positive":0,"second_minimum_kpa":null,"second_maximum_kpa":null,"fill_order":null,"spacer_volume_mm3":null,"spacer_limit":null,"area_mm2":1450.0,"positive_mm3":null,"negative_mm3":null,"spring_stroke_mm":null,"preload_limit_mm":null,"preload_pitch_mm":null,"maker_sag_low":null,"maker_sag_high":null,"maker_posture":"","maker_table":"","is_dual_crown":0,"is_inverted":0,"damper_in_one_leg":0,"exposed_nominal_mm":null,"eye_to_eye_mm":null,"mounting":null,"serial":"","note":""}','{"id":"07538be2-2ede-4623-aa87-d2af8deb6da3","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","end":"rear","kind":"shock","name":"","spring":"air","travel_mm":60.0,"minimum_kpa":null,"maximum_kpa":null,"negative":"self","has_second_positive":0,"second_minimum_kpa":null,"second_maximum_kpa":null,"fill_order":null,"spacer_volume_mm3":null,"spacer_limit":null,"area_mm2":1450.0,"positive_mm3":null,"negative_mm3":null,"spring_stroke_mm":null,"preload_limit_mm":null,"preload_pitch_mm":null,"maker_sag_low":null,"maker_sag_high":null,"maker_posture":"","maker_table":"","is_dual_crown":0,"is_inverted":0,"damper_in_one_leg":0,"exposed_nominal_mm":null,"eye_to_eye_mm":205.0,"mounting":"rear hole","serial":"","note":""}');
INSERT INTO "deed_row" VALUES('a69f132b-c060-435f-8ee0-7a325bf182f4','on_bike','75e79ac1-6d3e-4583-bbca-00127d1cc839',NULL,'{"id":"75e79ac1-6d3e-4583-bbca-00127d1cc839","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","at":"2031-05-14T09:00:08+00:00","sequence":9,"item":"adjuster","subject_id":"c234b9b7-6e50-46ab-a99d-5860a5d99dec","value":12.0,"how":"opened","range_id":"e3c556c9-3587-4f38-a6af-00ea7db243b2","temperature_c":null,"pump_id":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","deed_id":"a69f132b-c060-435f-8ee0-7a325bf182f4"}');
INSERT INTO "deed_row" VALUES('a69f132b-c060-435f-8ee0-7a325bf182f4','range_count','e3c556c9-3587-4f38-a6af-00ea7db243b2',NULL,'{"id":"e3c556c9-3587-4f38-a6af-00ea7db243b2","adjuster_id":"c234b9b7-6e50-46ab-a99d-5860a5d99dec","generation_id":"883972de-8f39-42ad-a8d1-f007e99664d8","steps":12,"as_found":4,"counted_at":"2031-05-14T09:00:08+00:00","person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","note":""}');
INSERT INTO "deed_row" VALUES('a87425db-50c4-4cbc-9fe8-e92f83b22d43','bike','524af228-d00f-4d26-88f5-6e1aa34f039f','{"id":"524af228-d00f-4d26-88f5-6e1aa34f039f","name":"Larch 150","layout":"air_air","discipline":"trail","is_ebike":0,"rear_travel_mm":145.0,"head_angle_deg":null,"wheelbase_mm":null,"bb_drop_mm":null,"tags":"","note":"","created_at":"2031-05-14T09:00:02+00:00","archived_at":null}','{"id":"524af228-d00f-4d26-88f5-6e1aa34f039f","name":"Larch 150","layout":"air_air","discipline":"trail","is_ebike":0,"rear_travel_mm":145.0,"head_angle_deg":null,"wheelbase_mm":null,"bb_drop_mm":null,"tags":"","note":"Fährt; <b>quoted</b> ''twice'' — ½ turn","created_at":"2031-05-14T09:00:02+00:00","archived_at":null}');
INSERT INTO "deed_row" VALUES('b6357671-5b71-45ee-99ac-86070ccbf067','on_bike','0b084121-89ca-4a15-b962-95e47293315a',NULL,'{"id":"0b084121-89ca-4a15-b962-95e47293315a","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","at":"2031-05-14T09:00:19+00:00","sequence":18,"item":"spacers","subject_id":"5f072154-220c-4f21-829a-aa5e3b446c7c","value":1.0,"how":"set_to","range_id":null,"temperature_c":null,"pump_id":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","deed_id":"b6357671-5b71-45ee-99ac-86070ccbf067"}');
INSERT INTO "deed_row" VALUES('b6357671-5b71-45ee-99ac-86070ccbf067','on_bike','f3658f2d-5e50-40e0-a141-a26e895d58f2',NULL,'{"id":"f3658f2d-5e50-40e0-a141-a26e895d58f2","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","at":"2031-05-14T09:00:19+00:00","sequence":17,"item":"pressure","subject_id":"5f072154-220c-4f21-829a-aa5e3b446c7c","value":520.0,"how":"as_pumped","range_id":null,"temperature_c":20.0,"pump_id":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","deed_id":"b6357671-5b71-45ee-99ac-86070ccbf067"}');
INSERT INTO "deed_row" VALUES('b6357671-5b71-45ee-99ac-86070ccbf067','sag_measurement','82de1b72-9ce9-4039-82d4-422f0093d67f',NULL,'{"id":"82de1b72-9ce9-4039-82d4-422f0093d67f","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","rider_id":"dab31048-9483-469f-9ff3-f4e393f8dd8d","unit_id":"5f072154-220c-4f21-829a-aa5e3b446c7c","measured_at":"2031-05-14T09:00:17+00:00","posture":"standing","travel_mm":150.0,"sag_mm":30.75,"spread_mm":0.5,"target":0.2,"target_low":0.18,"target_high":0.22,"target_origin":"common_practice","is_kept":0,"method":"helper","generation_id":"86aca3de-2353-4343-8baf-802704181cb3","pressure_kpa":494.0,"pressure_how":"as_pumped","second_kpa":null,"rate_n_per_mm":null,"preload_mm":null,"spacers":1,"temperature_c":20.0,"rider_mass_kg":84.5,"pump_id":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","note":""}');
INSERT INTO "deed_row" VALUES('b6357671-5b71-45ee-99ac-86070ccbf067','sag_measurement','a1e5ff27-69b9-4739-b3ff-4eefdc6fb95d',NULL,'{"id":"a1e5ff27-69b9-4739-b3ff-4eefdc6fb95d","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","rider_id":"dab31048-9483-469f-9ff3-f4e393f8dd8d","unit_id":"5f072154-220c-4f21-829a-aa5e3b446c7c","measured_at":"2031-05-14T09:00:18+00:00","posture":"standing","travel_mm":150.0,"sag_mm":30.75,"spread_mm":0.5,"target":0.2,"target_low":0.18,"target_high":0.22,"target_origin":"common_practice","is_kept":1,"method":"helper","generation_id":"86aca3de-2353-4343-8baf-802704181cb3","pressure_kpa":520.0,"pressure_how":"as_pumped","second_kpa":null,"rate_n_per_mm":null,"preload_mm":null,"spacers":1,"temperature_c":20.0,"rider_mass_kg":84.5,"pump_id":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","note":""}');
INSERT INTO "deed_row" VALUES('b6357671-5b71-45ee-99ac-86070ccbf067','sag_reading','8d0259d0-509a-4459-b540-dfb4e974be85',NULL,'{"id":"8d0259d0-509a-4459-b540-dfb4e974be85","measurement_id":"82de1b72-9ce9-4039-82d4-422f0093d67f","number":1,"sag_mm":30.5,"settled_from":""}');
INSERT INTO "deed_row" VALUES('b6357671-5b71-45ee-99ac-86070ccbf067','sag_reading','98835b1b-1e5e-4923-b580-ea6678c77a1e',NULL,'{"id":"98835b1b-1e5e-4923-b580-ea6678c77a1e","measurement_id":"82de1b72-9ce9-4039-82d4-422f0093d67f","number":2,"sag_mm":31.0,"settled_from":""}');
INSERT INTO "deed_row" VALUES('b6357671-5b71-45ee-99ac-86070ccbf067','sag_reading','af3cb246-02ff-4fa2-a932-8d8beec3d61b',NULL,'{"id":"af3cb246-02ff-4fa2-a932-8d8beec3d61b","measurement_id":"a1e5ff27-69b9-4739-b3ff-4eefdc6fb95d","number":2,"sag_mm":31.0,"settled_from":""}');
INSERT INTO "deed_row" VALUES('b6357671-5b71-45ee-99ac-86070ccbf067','sag_reading','e3d51514-0d41-471a-994c-7247df29bd1c',NULL,'{"id":"e3d51514-0d41-471a-994c-7247df29bd1c","measurement_id":"a1e5ff27-69b9-4739-b3ff-4eefdc6fb95d","number":1,"sag_mm":30.5,"settled_from":""}');
INSERT INTO "deed_row" VALUES('b6357671-5b71-45ee-99ac-86070ccbf067','sag_target','da26f1bf-f8fa-47f2-b6e3-246d8328bf0a',NULL,'{"id":"da26f1bf-f8fa-47f2-b6e3-246d8328bf0a","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","rider_id":"dab31048-9483-469f-9ff3-f4e393f8dd8d","unit_id":"5f072154-220c-4f21-829a-aa5e3b446c7c","target":0.2,"low":0.18,"high":0.22,"origin":"common_practice","posture":"standing"}');
INSERT INTO "deed_row" VALUES('ba7ce1c9-8c00-4903-a680-1cfc2013fc71','on_bike','5b078642-85c6-4845-80fe-9be87af5abeb',NULL,'{"id":"5b078642-85c6-4845-80fe-9be87af5abeb","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","at":"2031-05-14T09:00:11+00:00","sequence":13,"item":"pressure","subject_id":"5f072154-220c-4f21-829a-aa5e3b446c7c","value":520.0,"how":"as_attached","range_id":null,"temperature_c":null,"pump_id":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","deed_id":"ba7ce1c9-8c00-4903-a680-1cfc2013fc71"}');
INSERT INTO "deed_row" VALUES('c069f3b9-c2de-4246-8d9f-9231942fabed','unit','07538be2-2ede-4623-aa87-d2af8deb6da3','{"id":"07538be2-2ede-4623-aa87-d2af8deb6da3","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","end":"rear","kind":"shock","name":"","spring":"air","travel_mm":60.0,"minimum_kpa":null,"maximum_kpa":null,"negative":"self","has_second_positive":0,"second_minimum_kpa":null,"second_maximum_kpa":null,"spacer_volume_mm3":null,"spacer_limit":null,"area_mm2":null,"positive_mm3":null,"negative_mm3":null,"spring_stroke_mm":null,"preload_limit_mm":null,"preload_pitch_mm":null,"maker_sag_low":null,"maker_sag_high":null,"maker_posture":"","maker_table":"","is_dual_crown":0,"is_inverted":0,"damper_in_one_leg":0,"exposed_nominal_mm":null,"serial":"","note":""}','{"id":"07538be2-2ede-4623-aa87-d2af8deb6da3","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","end":"rear","kind":"shock","name":"","spring":"air","travel_mm":60.0,"minimum_kpa":null,"maximum_kpa":null,"negative":"self","has_second_positive":0,"second_minimum_kpa":null,"second_maximum_kpa":null,"spacer_volume_mm3":null,"spacer_limit":null,"area_mm2":1450.0,"positive_mm3":null,"negative_mm3":null,"spring_stroke_mm":null,"preload_limit_mm":null,"preload_pitch_mm":null,"maker_sag_low":null,"maker_sag_high":null,"maker_posture":"","maker_table":"","is_dual_crown":0,"is_inverted":0,"damper_in_one_leg":0,"exposed_nominal_mm":null,"serial":"","note":""}');
INSERT INTO "deed_row" VALUES('c760b085-1bca-4ee4-bbe2-4df6a44467e0','unit','5f072154-220c-4f21-829a-aa5e3b446c7c','{"id":"5f072154-220c-4f21-829a-aa5e3b446c7c","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","end":"front","kind":"fork","name":"","spring":"air","travel_mm":150.0,"minimum_kpa":null,"maximum_kpa":null,"negative":"self","has_second_positive":0,"second_minimum_kpa":null,"second_maximum_kpa":null,"fill_order":null,"spacer_volume_mm3":null,"spacer_limit":null,"area_mm2":null,"positive_mm3":null,"negative_mm3":null,"spring_stroke_mm":null,"preload_limit_mm":null,"preload_pitch_mm":null,"maker_sag_low":null,"maker_sag_high":null,"maker_posture":"","maker_table":"","is_dual_crown":0,"is_inverted":0,"damper_in_one_leg":0,"exposed_nominal_mm":null,"eye_to_eye_mm":null,"mounting":null,"serial":"","note":""}','{"id":"5f072154-220c-4f21-829a-aa5e3b446c7c","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","end":"front","kind":"fork","name":"","spring":"air","travel_mm":150.0,"minimum_kpa":null,"maximum_kpa":null,"negative":"self","has_second_positive":0,"second_minimum_kpa":null,"second_maximum_kpa":null,"fill_order":"second_first","spacer_volume_mm3":null,"spacer_limit":null,"area_mm2":null,"positive_mm3":null,"negative_mm3":null,"spring_stroke_mm":null,"preload_limit_mm":null,"preload_pitch_mm":null,"maker_sag_low":null,"maker_sag_high":null,"maker_posture":"","maker_table":"","is_dual_crown":0,"is_inverted":0,"damper_in_one_leg":0,"exposed_nominal_mm":null,"eye_to_eye_mm":null,"mounting":null,"serial":"","note":""}');
INSERT INTO "deed_row" VALUES('ceb2e93d-c7f8-43e5-8a8d-f7679744c083','person','77a4ea2b-3e93-4f69-b93c-90c17804e868',NULL,'{"id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","name":"R. Okafor","rides":1,"works_here":1,"is_child":0,"mass_kg":null,"pressure_unit":"psi","length_unit":"mm","mass_unit":"kg","rate_unit":"lbf/in","temperature_unit":"degC","note":"","created_at":"2031-05-14T09:00:01+00:00","archived_at":null}');
INSERT INTO "deed_row" VALUES('cf7c1ddc-9eb3-414a-aa57-e60110432efc','range_count','15b00ae5-1245-42e7-8ae3-91af49d7b889','{"id":"15b00ae5-1245-42e7-8ae3-91af49d7b889","adjuster_id":"b52a1cbe-d2e9-4bad-8feb-6c9ecb6ba19b","generation_id":"86aca3de-2353-4343-8baf-802704181cb3","steps":14,"as_found":5,"counted_at":"2031-05-14T09:00:04+00:00","person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","push_felt":null,"note":""}','{"id":"15b00ae5-1245-42e7-8ae3-91af49d7b889","adjuster_id":"b52a1cbe-d2e9-4bad-8feb-6c9ecb6ba19b","generation_id":"86aca3de-2353-4343-8baf-802704181cb3","steps":14,"as_found":5,"counted_at":"2031-05-14T09:00:04+00:00","person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","push_felt":"differs","note":""}');
INSERT INTO "deed_row" VALUES('d5e37274-817c-4a8f-b44b-e9a26d1a195b','on_bike','acc6d481-c487-4d5b-9a14-89108727e143',NULL,'{"id":"acc6d481-c487-4d5b-9a14-89108727e143","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","at":"2031-05-14T09:00:06+00:00","sequence":6,"item":"adjuster","subject_id":"51f68db9-74da-48f0-959e-25a4890b692b","value":17.0,"how":"opened","range_id":"f5421ab8-af2a-4c5b-94fa-0a2836e8da25","temperature_c":null,"pump_id":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","deed_id":"d5e37274-817c-4a8f-b44b-e9a26d1a195b"}');
INSERT INTO "deed_row" VALUES('d5e37274-817c-4a8f-b44b-e9a26d1a195b','range_count','f5421ab8-af2a-4c5b-94fa-0a2836e8da25',NULL,'{"id":"f5421ab8-af2a-4c5b-94fa-0a2836e8da25","adjuster_id":"51f68db9-74da-48f0-959e-25a4890b692b","generation_id":"86aca3de-2353-4343-8baf-802704181cb3","steps":17,"as_found":6,"counted_at":"2031-05-14T09:00:06+00:00","person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","note":""}');
INSERT INTO "deed_row" VALUES('d87662fd-296a-43cb-b3b1-3652dd1b8240','on_bike','5f016ebd-8910-4101-8750-254de7709da0',NULL,'{"id":"5f016ebd-8910-4101-8750-254de7709da0","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","at":"2031-05-14T09:00:14+00:00","sequence":16,"item":"tyre_pressure","subject_id":"9325b38e-cb13-40ac-abe9-fb484d333031","value":160.0,"how":"as_attached","range_id":null,"temperature_c":null,"pump_id":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","deed_id":"d87662fd-296a-43cb-b3b1-3652dd1b8240"}');
INSERT INTO "deed_row" VALUES('dbf06152-5e03-470b-a355-8590c70492f2','on_bike','26612ba5-2a65-493d-9bca-9a67dec1cd16',NULL,'{"id":"26612ba5-2a65-493d-9bca-9a67dec1cd16","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","at":"2031-05-14T09:00:26+00:00","sequence":21,"item":"adjuster","subject_id":"b52a1cbe-d2e9-4bad-8feb-6c9ecb6ba19b","value":5.0,"how":"set_to","range_id":"15b00ae5-1245-42e7-8ae3-91af49d7b889","temperature_c":null,"pump_id":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","deed_id":"dbf06152-5e03-470b-a355-8590c70492f2"}');
INSERT INTO "deed_row" VALUES('dbf06152-5e03-470b-a355-8590c70492f2','on_bike','54a048f8-a4af-4332-af7a-24bc6d5654b6',NULL,'{"id":"54a048f8-a4af-4332-af7a-24bc6d5654b6","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","at":"2031-05-14T09:00:26+00:00","sequence":22,"item":"adjuster","subject_id":"51f68db9-74da-48f0-959e-25a4890b692b","value":6.0,"how":"set_to","range_id":"f5421ab8-af2a-4c5b-94fa-0a2836e8da25","temperature_c":null,"pump_id":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","deed_id":"dbf06152-5e03-470b-a355-8590c70492f2"}');
INSERT INTO "deed_row" VALUES('dbf06152-5e03-470b-a355-8590c70492f2','on_bike','bdb95d71-792c-4d19-8f91-b8c571eeba66',NULL,'{"id":"bdb95d71-792c-4d19-8f91-b8c571eeba66","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","at":"2031-05-14T09:00:26+00:00","sequence":23,"item":"adjuster","subject_id":"c234b9b7-6e50-46ab-a99d-5860a5d99dec","value":4.0,"how":"set_to","range_id":"e3c556c9-3587-4f38-a6af-00ea7db243b2","temperature_c":null,"pump_id":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","deed_id":"dbf06152-5e03-470b-a355-8590c70492f2"}');
INSERT INTO "deed_row" VALUES('dbf06152-5e03-470b-a355-8590c70492f2','on_bike','f499cee9-ab42-4c76-93a5-c0d087f824c5',NULL,'{"id":"f499cee9-ab42-4c76-93a5-c0d087f824c5","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","at":"2031-05-14T09:00:26+00:00","sequence":24,"item":"adjuster","subject_id":"8a9ba067-cfff-4cfa-a64b-54805d005456","value":7.0,"how":"set_to","range_id":"c463cfdf-b3c4-4a6e-8816-8f3b04e04b6e","temperature_c":null,"pump_id":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","deed_id":"dbf06152-5e03-470b-a355-8590c70492f2"}');
INSERT INTO "deed_row" VALUES('e2a81570-090e-47ef-ada6-e8898871364e','on_bike','549b84a6-f8d1-46c1-abbf-8b80fcffcb3a',NULL,'{"id":"549b84a6-f8d1-46c1-abbf-8b80fcffcb3a","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","at":"2031-05-14T09:00:05+00:00","sequence":4,"item":"adjuster","subject_id":"51f68db9-74da-48f0-959e-25a4890b692b","value":6.0,"how":"counted","range_id":null,"temperature_c":null,"pump_id":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","deed_id":"e2a81570-090e-47ef-ada6-e8898871364e"}');
INSERT INTO "deed_row" VALUES('e2a81570-090e-47ef-ada6-e8898871364e','on_bike','a6f32cca-99f4-4628-8a77-59573c2e20b6',NULL,'{"id":"a6f32cca-99f4-4628-8a77-59573c2e20b6","bike_id":"524af228-d00f-4d26-88f5-6e1aa34f039f","at":"2031-05-14T09:00:05+00:00","sequence":5,"item":"adjuster","subject_id":"51f68db9-74da-48f0-959e-25a4890b692b","value":0.0,"how":"closed","range_id":null,"temperature_c":null,"pump_id":null,"person_id":"77a4ea2b-3e93-4f69-b93c-90c17804e868","deed_id":"e2a81570-090e-47ef-ada6-e8898871364e"}');
INSERT INTO "deed_row" VALUES('e7c9cdb3-ce50-4263-aa22-e2d434ec9db3','course','28a2718d-9ace-48a3-a926-9bc8197ab608',NULL,'{"id":"28a2718d-9ace-48a3-a926-9bc8197ab608","name":"Quarry loop","has_heavy_hit":1,"typical_s":null,"altitude_m":null,"note":"","archived_at":null}');
INSERT INTO "deed_row" VALUES('eff89db7-2186-46c6-bf66-49832abe4de1','check_item','f27e1fb3-1b00-4aa6-8da1-c675cbc705d5','{"id":"f27e1fb3-1b00-4aa6-8da1-c675cbc705d5","checkin_id":"b3312701-6029-481d-aa17-f8fe0f41710d","code":"frame","severity":"attend","note":"near the weld","is_declined":0,"override_reason":"","reason":"Marks","measured_mm":null,"overruled_by":null,"overruled_at":null,"closed_at":null,"closed_how":null,"photo_id":"0b23fe11-7daf-49d9-8530-76a15603a115"}','{"id":"f27e1fb3-1b00-4aa6-8da1-c675cbc705d5","checkin_id":"b3312701-6029-481d-aa17-f8fe0f41710d","code":"frame","severity":"attend","note":"near the weld","is_declined":1,"override_reason":"","reason":"Marks","measured_mm":null,"overruled_by":null,"overruled_at":null,"closed_at":null,"closed_how":null,"photo_id":"0b23fe11-7daf-49d9-8530-76a15603a115"}');
INSERT INTO "deed_row" VALUES('f11bc01b-5a8d-4c1f-88d4-60838dd494ab','spring','d42272e4-09a1-4e6c-b32d-0474714d65bd','{"id":"d42272e4-09a1-4e6c-b32d-0474714d65bd","unit_id":"07538be2-2ede-4623-aa87-d2af8deb6da3","rate_n_per_mm":78.8,"stroke_mm":65.0,"label":"spare","how":null,"curve":null}','{"id":"d42272e4-09a1-4e6c-b32d-0474714d65bd","unit_id":"07538be2-2ede-4623-aa87-d2af8deb6da3","rate_n_per_mm":78.8,"stroke_mm":65.0,"label":"spare","how":"pressed","curve":"[[0.0, 0.0], [10.0, 800.0], [20.0, 1700.0]]"}');
CREATE TABLE draft (
	id TEXT NOT NULL, 
	kind TEXT NOT NULL, 
	bike_id TEXT, 
	subject TEXT, 
	body TEXT NOT NULL, 
	started_at TEXT NOT NULL, 
	updated_at TEXT NOT NULL, 
	closed_by TEXT, 
	CONSTRAINT pk_draft PRIMARY KEY (id)
)
 STRICT

;
INSERT INTO "draft" VALUES('8c683947-41ad-443a-adec-47775166a51d','leverage','524af228-d00f-4d26-88f5-6e1aa34f039f','07538be2-2ede-4623-aa87-d2af8deb6da3','{"pairs": [["20", "52"]], "mounting": "long"}','2031-05-14T09:00:23+00:00','2031-05-14T09:00:23+00:00','8280fc82-209c-4f73-9776-b17a89894b9e');
INSERT INTO "draft" VALUES('867ad8cc-e538-40a5-8fb1-43d27a794c22','sag','524af228-d00f-4d26-88f5-6e1aa34f039f',NULL,'{"sag": "14,"}','2031-05-14T09:00:41+00:00','2031-05-14T09:00:41+00:00',NULL);
CREATE TABLE generation (
	id TEXT NOT NULL, 
	unit_id TEXT NOT NULL, 
	number INTEGER NOT NULL, 
	reason TEXT NOT NULL, 
	started_at TEXT NOT NULL, 
	note TEXT NOT NULL, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_generation PRIMARY KEY (id), 
	CONSTRAINT fk_generation_unit_id FOREIGN KEY(unit_id) REFERENCES unit (id) DEFERRABLE INITIALLY DEFERRED
)
 STRICT

;
INSERT INTO "generation" VALUES('86aca3de-2353-4343-8baf-802704181cb3','5f072154-220c-4f21-829a-aa5e3b446c7c',1,'new','2031-05-14T09:00:02+00:00','',2);
INSERT INTO "generation" VALUES('883972de-8f39-42ad-a8d1-f007e99664d8','07538be2-2ede-4623-aa87-d2af8deb6da3',1,'new','2031-05-14T09:00:02+00:00','',2);
INSERT INTO "generation" VALUES('a45a16f3-2c48-4c44-9451-2d5de380f1ab','2261a01d-190f-46b7-b9fd-61c596fe8893',1,'new','2031-06-02T09:00:11+00:00','',38);
INSERT INTO "generation" VALUES('0dbfd073-32dd-4988-aea0-1850163368f8','00e69ff0-af45-4ac1-a5ad-c1138a7fc66e',1,'new','2031-06-02T09:00:11+00:00','',38);
CREATE TABLE leverage_point (
	id TEXT NOT NULL, 
	survey_id TEXT NOT NULL, 
	stroke_mm REAL NOT NULL, 
	wheel_mm REAL NOT NULL, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_leverage_point PRIMARY KEY (id), 
	CONSTRAINT fk_leverage_point_survey_id FOREIGN KEY(survey_id) REFERENCES leverage_survey (id) DEFERRABLE INITIALLY DEFERRED
)
 STRICT

;
INSERT INTO "leverage_point" VALUES('3a73ccb1-a2f4-42bc-8936-e5d130a8273f','98105dcf-3491-4bbe-81dc-f8b5b148ab4d',0.0,0.0,19);
INSERT INTO "leverage_point" VALUES('d5c36ed5-a330-4c2e-894d-16efa37f8b1c','98105dcf-3491-4bbe-81dc-f8b5b148ab4d',20.0,52.0,19);
INSERT INTO "leverage_point" VALUES('71cbe327-41e7-4a00-8d47-e7ab59224d30','98105dcf-3491-4bbe-81dc-f8b5b148ab4d',40.0,101.0,19);
INSERT INTO "leverage_point" VALUES('ce57b954-3c26-4763-ba2c-cfb8528d7dae','98105dcf-3491-4bbe-81dc-f8b5b148ab4d',60.0,145.0,19);
CREATE TABLE leverage_survey (
	id TEXT NOT NULL, 
	bike_id TEXT NOT NULL, 
	unit_id TEXT NOT NULL, 
	mounting TEXT NOT NULL, 
	reading_sd_mm REAL NOT NULL, 
	made_at TEXT NOT NULL, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_leverage_survey PRIMARY KEY (id), 
	CONSTRAINT fk_leverage_survey_bike_id FOREIGN KEY(bike_id) REFERENCES bike (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_leverage_survey_unit_id FOREIGN KEY(unit_id) REFERENCES unit (id) DEFERRABLE INITIALLY DEFERRED
)
 STRICT

;
INSERT INTO "leverage_survey" VALUES('98105dcf-3491-4bbe-81dc-f8b5b148ab4d','524af228-d00f-4d26-88f5-6e1aa34f039f','07538be2-2ede-4623-aa87-d2af8deb6da3','long',1.0,'2031-05-14T09:00:24+00:00',19);
CREATE TABLE on_bike (
	id TEXT NOT NULL, 
	bike_id TEXT NOT NULL, 
	at TEXT NOT NULL, 
	sequence INTEGER NOT NULL, 
	item TEXT NOT NULL, 
	subject_id TEXT NOT NULL, 
	value REAL, 
	how TEXT NOT NULL, 
	range_id TEXT, 
	temperature_c REAL, 
	pump_id TEXT, 
	person_id TEXT, 
	deed_id TEXT NOT NULL, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_on_bike PRIMARY KEY (id), 
	CONSTRAINT uq_on_bike_bike_id_sequence UNIQUE (bike_id, sequence), 
	CONSTRAINT fk_on_bike_bike_id FOREIGN KEY(bike_id) REFERENCES bike (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_on_bike_range_id FOREIGN KEY(range_id) REFERENCES range_count (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_on_bike_pump_id FOREIGN KEY(pump_id) REFERENCES pump (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_on_bike_person_id FOREIGN KEY(person_id) REFERENCES person (id) DEFERRABLE INITIALLY DEFERRED
)
 STRICT

;
INSERT INTO "on_bike" VALUES('c8f018e3-bf20-4b32-b32d-cb7f25962ec8','524af228-d00f-4d26-88f5-6e1aa34f039f','2031-05-14T09:00:03+00:00',1,'adjuster','b52a1cbe-d2e9-4bad-8feb-6c9ecb6ba19b',5.0,'counted',NULL,NULL,NULL,'77a4ea2b-3e93-4f69-b93c-90c17804e868','7ebacefb-e833-4e45-af2e-ec04a1fc1246',3);
INSERT INTO "on_bike" VALUES('692e60bb-3564-4afa-b35c-114b50270101','524af228-d00f-4d26-88f5-6e1aa34f039f','2031-05-14T09:00:03+00:00',2,'adjuster','b52a1cbe-d2e9-4bad-8feb-6c9ecb6ba19b',0.0,'closed',NULL,NULL,NULL,'77a4ea2b-3e93-4f69-b93c-90c17804e868','7ebacefb-e833-4e45-af2e-ec04a1fc1246',3);
INSERT INTO "on_bike" VALUES('ca5cd48f-5fb8-4ee4-a3fc-608f061fe8ca','524af228-d00f-4d26-88f5-6e1aa34f039f','2031-05-14T09:00:04+00:00',3,'adjuster','b52a1cbe-d2e9-4bad-8feb-6c9ecb6ba19b',14.0,'opened','15b00ae5-1245-42e7-8ae3-91af49d7b889',NULL,NULL,'77a4ea2b-3e93-4f69-b93c-90c17804e868','1eb5eff3-4603-4d90-9bfd-a7ef4df44728',4);
INSERT INTO "on_bike" VALUES('549b84a6-f8d1-46c1-abbf-8b80fcffcb3a','524af228-d00f-4d26-88f5-6e1aa34f039f','2031-05-14T09:00:05+00:00',4,'adjuster','51f68db9-74da-48f0-959e-25a4890b692b',6.0,'counted',NULL,NULL,NULL,'77a4ea2b-3e93-4f69-b93c-90c17804e868','e2a81570-090e-47ef-ada6-e8898871364e',5);
INSERT INTO "on_bike" VALUES('a6f32cca-99f4-4628-8a77-59573c2e20b6','524af228-d00f-4d26-88f5-6e1aa34f039f','2031-05-14T09:00:05+00:00',5,'adjuster','51f68db9-74da-48f0-959e-25a4890b692b',0.0,'closed',NULL,NULL,NULL,'77a4ea2b-3e93-4f69-b93c-90c17804e868','e2a81570-090e-47ef-ada6-e8898871364e',5);
INSERT INTO "on_bike" VALUES('acc6d481-c487-4d5b-9a14-89108727e143','524af228-d00f-4d26-88f5-6e1aa34f039f','2031-05-14T09:00:06+00:00',6,'adjuster','51f68db9-74da-48f0-959e-25a4890b692b',17.0,'opened','f5421ab8-af2a-4c5b-94fa-0a2836e8da25',NULL,NULL,'77a4ea2b-3e93-4f69-b93c-90c17804e868','d5e37274-817c-4a8f-b44b-e9a26d1a195b',6);
INSERT INTO "on_bike" VALUES('4aaedee2-85a8-4f60-8899-472bd578502b','524af228-d00f-4d26-88f5-6e1aa34f039f','2031-05-14T09:00:07+00:00',7,'adjuster','c234b9b7-6e50-46ab-a99d-5860a5d99dec',4.0,'counted',NULL,NULL,NULL,'77a4ea2b-3e93-4f69-b93c-90c17804e868','548fe1f8-dbe8-45c6-bf85-937fb68a820b',7);
INSERT INTO "on_bike" VALUES('742e2d3a-ccda-4605-9842-4d78bd72ab85','524af228-d00f-4d26-88f5-6e1aa34f039f','2031-05-14T09:00:07+00:00',8,'adjuster','c234b9b7-6e50-46ab-a99d-5860a5d99dec',0.0,'closed',NULL,NULL,NULL,'77a4ea2b-3e93-4f69-b93c-90c17804e868','548fe1f8-dbe8-45c6-bf85-937fb68a820b',7);
INSERT INTO "on_bike" VALUES('75e79ac1-6d3e-4583-bbca-00127d1cc839','524af228-d00f-4d26-88f5-6e1aa34f039f','2031-05-14T09:00:08+00:00',9,'adjuster','c234b9b7-6e50-46ab-a99d-5860a5d99dec',12.0,'opened','e3c556c9-3587-4f38-a6af-00ea7db243b2',NULL,NULL,'77a4ea2b-3e93-4f69-b93c-90c17804e868','a69f132b-c060-435f-8ee0-7a325bf182f4',8);
INSERT INTO "on_bike" VALUES('a52929c8-424b-4b36-b19d-e3e4f6453fd4','524af228-d00f-4d26-88f5-6e1aa34f039f','2031-05-14T09:00:09+00:00',10,'adjuster','8a9ba067-cfff-4cfa-a64b-54805d005456',7.0,'counted',NULL,NULL,NULL,'77a4ea2b-3e93-4f69-b93c-90c17804e868','335d08d0-8fa6-4313-983f-31c9a5675188',9);
INSERT INTO "on_bike" VALUES('0ea1c9ed-256c-46e3-b661-11e3ddbc5b74','524af228-d00f-4d26-88f5-6e1aa34f039f','2031-05-14T09:00:09+00:00',11,'adjuster','8a9ba067-cfff-4cfa-a64b-54805d005456',0.0,'closed',NULL,NULL,NULL,'77a4ea2b-3e93-4f69-b93c-90c17804e868','335d08d0-8fa6-4313-983f-31c9a5675188',9);
INSERT INTO "on_bike" VALUES('db279a68-e140-4600-952a-941c4cebd9cc','524af228-d00f-4d26-88f5-6e1aa34f039f','2031-05-14T09:00:10+00:00',12,'adjuster','8a9ba067-cfff-4cfa-a64b-54805d005456',13.0,'opened','c463cfdf-b3c4-4a6e-8816-8f3b04e04b6e',NULL,NULL,'77a4ea2b-3e93-4f69-b93c-90c17804e868','2e153129-e6fd-4159-a032-051cf35de209',10);
INSERT INTO "on_bike" VALUES('5b078642-85c6-4845-80fe-9be87af5abeb','524af228-d00f-4d26-88f5-6e1aa34f039f','2031-05-14T09:00:11+00:00',13,'pressure','5f072154-220c-4f21-829a-aa5e3b446c7c',520.0,'as_attached',NULL,NULL,NULL,'77a4ea2b-3e93-4f69-b93c-90c17804e868','ba7ce1c9-8c00-4903-a680-1cfc2013fc71',11);
INSERT INTO "on_bike" VALUES('2818bb54-4628-4774-9d06-58bfa325a806','524af228-d00f-4d26-88f5-6e1aa34f039f','2031-05-14T09:00:12+00:00',14,'pressure','07538be2-2ede-4623-aa87-d2af8deb6da3',1240.0,'as_attached',NULL,NULL,NULL,'77a4ea2b-3e93-4f69-b93c-90c17804e868','a2bb41ec-78cc-4001-a54a-d06467293633',12);
INSERT INTO "on_bike" VALUES('97f53c0f-a363-428e-8c02-2378b7048c26','524af228-d00f-4d26-88f5-6e1aa34f039f','2031-05-14T09:00:13+00:00',15,'tyre_pressure','f955690c-2083-41fc-8805-16082c1af193',160.0,'as_attached',NULL,NULL,NULL,'77a4ea2b-3e93-4f69-b93c-90c17804e868','144bc0bc-d944-4a9a-b051-eed01dce6aa2',13);
INSERT INTO "on_bike" VALUES('5f016ebd-8910-4101-8750-254de7709da0','524af228-d00f-4d26-88f5-6e1aa34f039f','2031-05-14T09:00:14+00:00',16,'tyre_pressure','9325b38e-cb13-40ac-abe9-fb484d333031',160.0,'as_attached',NULL,NULL,NULL,'77a4ea2b-3e93-4f69-b93c-90c17804e868','d87662fd-296a-43cb-b3b1-3652dd1b8240',14);
INSERT INTO "on_bike" VALUES('f3658f2d-5e50-40e0-a141-a26e895d58f2','524af228-d00f-4d26-88f5-6e1aa34f039f','2031-05-14T09:00:19+00:00',17,'pressure','5f072154-220c-4f21-829a-aa5e3b446c7c',520.0,'as_pumped',NULL,20.0,NULL,'77a4ea2b-3e93-4f69-b93c-90c17804e868','b6357671-5b71-45ee-99ac-86070ccbf067',17);
INSERT INTO "on_bike" VALUES('0b084121-89ca-4a15-b962-95e47293315a','524af228-d00f-4d26-88f5-6e1aa34f039f','2031-05-14T09:00:19+00:00',18,'spacers','5f072154-220c-4f21-829a-aa5e3b446c7c',1.0,'set_to',NULL,NULL,NULL,'77a4ea2b-3e93-4f69-b93c-90c17804e868','b6357671-5b71-45ee-99ac-86070ccbf067',17);
INSERT INTO "on_bike" VALUES('19041b51-65ea-455f-882c-a381601383b7','524af228-d00f-4d26-88f5-6e1aa34f039f','2031-05-14T09:00:22+00:00',19,'pressure','07538be2-2ede-4623-aa87-d2af8deb6da3',1240.0,'as_pumped',NULL,20.0,NULL,'77a4ea2b-3e93-4f69-b93c-90c17804e868','04e9bbd4-5e26-4029-9cb2-32210c6b8f50',18);
INSERT INTO "on_bike" VALUES('5e459fa0-ee89-405b-9260-01b323d046aa','524af228-d00f-4d26-88f5-6e1aa34f039f','2031-05-14T09:00:22+00:00',20,'spacers','07538be2-2ede-4623-aa87-d2af8deb6da3',1.0,'set_to',NULL,NULL,NULL,'77a4ea2b-3e93-4f69-b93c-90c17804e868','04e9bbd4-5e26-4029-9cb2-32210c6b8f50',18);
INSERT INTO "on_bike" VALUES('26612ba5-2a65-493d-9bca-9a67dec1cd16','524af228-d00f-4d26-88f5-6e1aa34f039f','2031-05-14T09:00:26+00:00',21,'adjuster','b52a1cbe-d2e9-4bad-8feb-6c9ecb6ba19b',5.0,'set_to','15b00ae5-1245-42e7-8ae3-91af49d7b889',NULL,NULL,'77a4ea2b-3e93-4f69-b93c-90c17804e868','dbf06152-5e03-470b-a355-8590c70492f2',21);
INSERT INTO "on_bike" VALUES('54a048f8-a4af-4332-af7a-24bc6d5654b6','524af228-d00f-4d26-88f5-6e1aa34f039f','2031-05-14T09:00:26+00:00',22,'adjuster','51f68db9-74da-48f0-959e-25a4890b692b',6.0,'set_to','f5421ab8-af2a-4c5b-94fa-0a2836e8da25',NULL,NULL,'77a4ea2b-3e93-4f69-b93c-90c17804e868','dbf06152-5e03-470b-a355-8590c70492f2',21);
INSERT INTO "on_bike" VALUES('bdb95d71-792c-4d19-8f91-b8c571eeba66','524af228-d00f-4d26-88f5-6e1aa34f039f','2031-05-14T09:00:26+00:00',23,'adjuster','c234b9b7-6e50-46ab-a99d-5860a5d99dec',4.0,'set_to','e3c556c9-3587-4f38-a6af-00ea7db243b2',NULL,NULL,'77a4ea2b-3e93-4f69-b93c-90c17804e868','dbf06152-5e03-470b-a355-8590c70492f2',21);
INSERT INTO "on_bike" VALUES('f499cee9-ab42-4c76-93a5-c0d087f824c5','524af228-d00f-4d26-88f5-6e1aa34f039f','2031-05-14T09:00:26+00:00',24,'adjuster','8a9ba067-cfff-4cfa-a64b-54805d005456',7.0,'set_to','c463cfdf-b3c4-4a6e-8816-8f3b04e04b6e',NULL,NULL,'77a4ea2b-3e93-4f69-b93c-90c17804e868','dbf06152-5e03-470b-a355-8590c70492f2',21);
CREATE TABLE overrule (
	id TEXT NOT NULL, 
	session_id TEXT NOT NULL, 
	adjuster_id TEXT NOT NULL, 
	proposed INTEGER NOT NULL, 
	chosen INTEGER NOT NULL, 
	at TEXT NOT NULL, 
	reason TEXT NOT NULL, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_overrule PRIMARY KEY (id), 
	CONSTRAINT fk_overrule_session_id FOREIGN KEY(session_id) REFERENCES session (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_overrule_adjuster_id FOREIGN KEY(adjuster_id) REFERENCES adjuster (id) DEFERRABLE INITIALLY DEFERRED
)
 STRICT

;
INSERT INTO "overrule" VALUES('9f3a3344-a4cb-43fc-ad5f-f52cb5aceccb','7fedf9fc-3f87-40a1-bf17-e2b14cfdde1d','51f68db9-74da-48f0-959e-25a4890b692b',6,8,'2031-05-14T09:00:35+00:00','',25);
CREATE TABLE person (
	id TEXT NOT NULL, 
	name TEXT NOT NULL, 
	rides INTEGER NOT NULL, 
	works_here INTEGER NOT NULL, 
	is_child INTEGER NOT NULL, 
	mass_kg REAL, 
	pressure_unit TEXT NOT NULL, 
	length_unit TEXT NOT NULL, 
	mass_unit TEXT NOT NULL, 
	rate_unit TEXT NOT NULL, 
	temperature_unit TEXT NOT NULL, 
	note TEXT NOT NULL, 
	created_at TEXT NOT NULL, 
	archived_at TEXT, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_person PRIMARY KEY (id), 
	CONSTRAINT ck_person_rides CHECK (rides IN (0, 1)), 
	CONSTRAINT ck_person_works_here CHECK (works_here IN (0, 1)), 
	CONSTRAINT ck_person_is_child CHECK (is_child IN (0, 1))
)
 STRICT

;
INSERT INTO "person" VALUES('77a4ea2b-3e93-4f69-b93c-90c17804e868','R. Okafor',1,1,0,NULL,'psi','mm','kg','lbf/in','degC','','2031-05-14T09:00:01+00:00',NULL,1);
INSERT INTO "person" VALUES('dab31048-9483-469f-9ff3-f4e393f8dd8d','M. Anders',1,0,0,84.5,'psi','mm','kg','lbf/in','degC','','2031-05-14T09:00:02+00:00',NULL,2);
CREATE TABLE photo (
	id TEXT NOT NULL, 
	bike_id TEXT NOT NULL, 
	sha256 TEXT NOT NULL, 
	name TEXT NOT NULL, 
	taken_at TEXT NOT NULL, 
	note TEXT NOT NULL, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_photo PRIMARY KEY (id), 
	CONSTRAINT fk_photo_bike_id FOREIGN KEY(bike_id) REFERENCES bike (id) DEFERRABLE INITIALLY DEFERRED
)
 STRICT

;
INSERT INTO "photo" VALUES('00db2a16-f60a-4a16-a517-d0aa2291b179','524af228-d00f-4d26-88f5-6e1aa34f039f','0000000000000000000000000000000000000000000000000000000000000000','linkage.jpg','2031-05-14T09:00:31+00:00','',25);
INSERT INTO "photo" VALUES('0b23fe11-7daf-49d9-8530-76a15603a115','524af228-d00f-4d26-88f5-6e1aa34f039f','0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f0f','crown.jpg','2031-06-02T09:00:07+00:00','',34);
CREATE TABLE pump (
	id TEXT NOT NULL, 
	name TEXT NOT NULL, 
	kind TEXT NOT NULL, 
	division_kpa REAL, 
	hose_note TEXT NOT NULL, 
	archived_at TEXT, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_pump PRIMARY KEY (id)
)
 STRICT

;
INSERT INTO "pump" VALUES('3b4e2b53-cc45-4b48-a933-23e6d54da99f','Shop pump','suspension',7.0,'',NULL,25);
CREATE TABLE "range_count" (
	id TEXT NOT NULL, 
	adjuster_id TEXT NOT NULL, 
	generation_id TEXT, 
	steps INTEGER NOT NULL, 
	as_found INTEGER, 
	counted_at TEXT NOT NULL, 
	person_id TEXT, push_felt TEXT, 
	note TEXT NOT NULL, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_range_count PRIMARY KEY (id), 
	CONSTRAINT fk_range_count_adjuster_id FOREIGN KEY(adjuster_id) REFERENCES adjuster (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_range_count_generation_id FOREIGN KEY(generation_id) REFERENCES generation (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_range_count_person_id FOREIGN KEY(person_id) REFERENCES person (id) DEFERRABLE INITIALLY DEFERRED
)
 STRICT

;
INSERT INTO "range_count" VALUES('f5421ab8-af2a-4c5b-94fa-0a2836e8da25','51f68db9-74da-48f0-959e-25a4890b692b','86aca3de-2353-4343-8baf-802704181cb3',17,6,'2031-05-14T09:00:06+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868',NULL,'',6);
INSERT INTO "range_count" VALUES('e3c556c9-3587-4f38-a6af-00ea7db243b2','c234b9b7-6e50-46ab-a99d-5860a5d99dec','883972de-8f39-42ad-a8d1-f007e99664d8',12,4,'2031-05-14T09:00:08+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868',NULL,'',8);
INSERT INTO "range_count" VALUES('c463cfdf-b3c4-4a6e-8816-8f3b04e04b6e','8a9ba067-cfff-4cfa-a64b-54805d005456','883972de-8f39-42ad-a8d1-f007e99664d8',13,7,'2031-05-14T09:00:10+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868',NULL,'',10);
INSERT INTO "range_count" VALUES('15b00ae5-1245-42e7-8ae3-91af49d7b889','b52a1cbe-d2e9-4bad-8feb-6c9ecb6ba19b','86aca3de-2353-4343-8baf-802704181cb3',14,5,'2031-05-14T09:00:04+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868','differs','',33);
CREATE TABLE riding_hours (
	id TEXT NOT NULL, 
	bike_id TEXT NOT NULL, 
	at TEXT NOT NULL, 
	hours REAL NOT NULL, 
	source TEXT NOT NULL, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_riding_hours PRIMARY KEY (id), 
	CONSTRAINT fk_riding_hours_bike_id FOREIGN KEY(bike_id) REFERENCES bike (id) DEFERRABLE INITIALLY DEFERRED
)
 STRICT

;
INSERT INTO "riding_hours" VALUES('143cbc8d-7401-479d-8efd-d8063c4f77ad','524af228-d00f-4d26-88f5-6e1aa34f039f','2031-05-14T09:00:37+00:00',12.5,'stated',25);
CREATE TABLE run (
	id TEXT NOT NULL, 
	session_id TEXT NOT NULL, 
	number INTEGER NOT NULL, 
	setup_id TEXT NOT NULL, 
	ridden_at TEXT NOT NULL, 
	typed_at TEXT NOT NULL, 
	is_warmup INTEGER NOT NULL, 
	is_confounded INTEGER NOT NULL, 
	is_blind INTEGER NOT NULL, 
	is_set_aside INTEGER NOT NULL, 
	set_aside_reason TEXT NOT NULL, 
	liking INTEGER, 
	direction INTEGER, 
	direction_of TEXT, 
	compared INTEGER, 
	travel_front_mm REAL, 
	travel_rear_mm REAL, 
	bottom_outs_front INTEGER, 
	bottom_outs_rear INTEGER, 
	lap_s REAL, 
	lever TEXT NOT NULL, 
	guess TEXT NOT NULL, 
	note TEXT NOT NULL, 
	person_id TEXT, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_run PRIMARY KEY (id), 
	CONSTRAINT ck_run_is_warmup CHECK (is_warmup IN (0, 1)), 
	CONSTRAINT ck_run_is_confounded CHECK (is_confounded IN (0, 1)), 
	CONSTRAINT ck_run_is_blind CHECK (is_blind IN (0, 1)), 
	CONSTRAINT ck_run_is_set_aside CHECK (is_set_aside IN (0, 1)), 
	CONSTRAINT uq_run_session_id_number UNIQUE (session_id, number), 
	CONSTRAINT fk_run_session_id FOREIGN KEY(session_id) REFERENCES session (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_run_setup_id FOREIGN KEY(setup_id) REFERENCES setup (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_run_direction_of FOREIGN KEY(direction_of) REFERENCES adjuster (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_run_person_id FOREIGN KEY(person_id) REFERENCES person (id) DEFERRABLE INITIALLY DEFERRED
)
 STRICT

;
INSERT INTO "run" VALUES('15112a42-40ee-4e06-9292-43ffdad5cfc9','7fedf9fc-3f87-40a1-bf17-e2b14cfdde1d',1,'538659b5-c4f0-49e2-9cd6-fd72c6717edb','2031-05-14T09:00:30+00:00','2031-05-14T09:00:30+00:00',0,0,0,0,'',6,1,'51f68db9-74da-48f0-959e-25a4890b692b',NULL,NULL,NULL,NULL,NULL,NULL,'','','dusty','77a4ea2b-3e93-4f69-b93c-90c17804e868',24);
CREATE TABLE run_rating (
	id TEXT NOT NULL, 
	run_id TEXT NOT NULL, 
	attribute TEXT NOT NULL, 
	score INTEGER NOT NULL, 
	"end" TEXT NOT NULL, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_run_rating PRIMARY KEY (id), 
	CONSTRAINT fk_run_rating_run_id FOREIGN KEY(run_id) REFERENCES run (id) DEFERRABLE INITIALLY DEFERRED
)
 STRICT

;
INSERT INTO "run_rating" VALUES('a1e09ca1-0daf-48fc-a25f-b4daed938f43','15112a42-40ee-4e06-9292-43ffdad5cfc9','grip',6,'rear',25);
CREATE TABLE run_symptom (
	id TEXT NOT NULL, 
	run_id TEXT NOT NULL, 
	symptom TEXT NOT NULL, 
	"end" TEXT NOT NULL, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_run_symptom PRIMARY KEY (id), 
	CONSTRAINT fk_run_symptom_run_id FOREIGN KEY(run_id) REFERENCES run (id) DEFERRABLE INITIALLY DEFERRED
)
 STRICT

;
INSERT INTO "run_symptom" VALUES('958ecbe6-4368-4ca2-a70c-db83046b0654','15112a42-40ee-4e06-9292-43ffdad5cfc9','packs','rear',25);
CREATE TABLE "sag_measurement" (
	id TEXT NOT NULL, 
	bike_id TEXT NOT NULL, 
	rider_id TEXT NOT NULL, 
	unit_id TEXT NOT NULL, 
	measured_at TEXT NOT NULL, 
	posture TEXT NOT NULL, 
	travel_mm REAL NOT NULL, 
	sag_mm REAL NOT NULL, 
	spread_mm REAL NOT NULL, 
	target REAL NOT NULL, 
	target_low REAL NOT NULL, 
	target_high REAL NOT NULL, 
	target_origin TEXT NOT NULL, 
	is_kept INTEGER NOT NULL, 
	method TEXT NOT NULL, 
	generation_id TEXT, 
	pressure_kpa REAL, 
	pressure_how TEXT NOT NULL, 
	second_kpa REAL, negative_kpa REAL, 
	rate_n_per_mm REAL, 
	preload_mm REAL, 
	spacers INTEGER, 
	temperature_c REAL, 
	rider_mass_kg REAL, 
	pump_id TEXT, 
	person_id TEXT, 
	note TEXT NOT NULL, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_sag_measurement PRIMARY KEY (id), 
	CONSTRAINT ck_sag_measurement_is_kept CHECK (is_kept IN (0, 1)), 
	CONSTRAINT fk_sag_measurement_bike_id FOREIGN KEY(bike_id) REFERENCES bike (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_sag_measurement_rider_id FOREIGN KEY(rider_id) REFERENCES person (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_sag_measurement_unit_id FOREIGN KEY(unit_id) REFERENCES unit (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_sag_measurement_generation_id FOREIGN KEY(generation_id) REFERENCES generation (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_sag_measurement_pump_id FOREIGN KEY(pump_id) REFERENCES pump (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_sag_measurement_person_id FOREIGN KEY(person_id) REFERENCES person (id) DEFERRABLE INITIALLY DEFERRED
)
 STRICT

;
INSERT INTO "sag_measurement" VALUES('82de1b72-9ce9-4039-82d4-422f0093d67f','524af228-d00f-4d26-88f5-6e1aa34f039f','dab31048-9483-469f-9ff3-f4e393f8dd8d','5f072154-220c-4f21-829a-aa5e3b446c7c','2031-05-14T09:00:17+00:00','standing',150.0,30.75,0.5,0.2,0.18,0.22,'common_practice',0,'helper','86aca3de-2353-4343-8baf-802704181cb3',494.0,'as_pumped',NULL,NULL,NULL,NULL,1,20.0,84.5,NULL,'77a4ea2b-3e93-4f69-b93c-90c17804e868','',17);
INSERT INTO "sag_measurement" VALUES('a1e5ff27-69b9-4739-b3ff-4eefdc6fb95d','524af228-d00f-4d26-88f5-6e1aa34f039f','dab31048-9483-469f-9ff3-f4e393f8dd8d','5f072154-220c-4f21-829a-aa5e3b446c7c','2031-05-14T09:00:18+00:00','standing',150.0,30.75,0.5,0.2,0.18,0.22,'common_practice',1,'helper','86aca3de-2353-4343-8baf-802704181cb3',520.0,'as_pumped',NULL,NULL,NULL,NULL,1,20.0,84.5,NULL,'77a4ea2b-3e93-4f69-b93c-90c17804e868','',17);
INSERT INTO "sag_measurement" VALUES('d9f2b97c-bd73-49ad-81ac-69e3148ace6d','524af228-d00f-4d26-88f5-6e1aa34f039f','dab31048-9483-469f-9ff3-f4e393f8dd8d','07538be2-2ede-4623-aa87-d2af8deb6da3','2031-05-14T09:00:21+00:00','standing',60.0,17.0,0.5,2.85000000000000031086e-01,0.27,0.3,'common_practice',1,'helper','883972de-8f39-42ad-a8d1-f007e99664d8',1240.0,'as_pumped',NULL,NULL,NULL,NULL,1,20.0,84.5,NULL,'77a4ea2b-3e93-4f69-b93c-90c17804e868','',18);
INSERT INTO "sag_measurement" VALUES('2e2130b6-d2e7-4378-a281-900183132d3b','524af228-d00f-4d26-88f5-6e1aa34f039f','dab31048-9483-469f-9ff3-f4e393f8dd8d','07538be2-2ede-4623-aa87-d2af8deb6da3','2031-05-14T09:00:20+00:00','standing',60.0,17.0,0.5,2.85000000000000031086e-01,0.27,0.3,'common_practice',0,'helper','883972de-8f39-42ad-a8d1-f007e99664d8',1178.0,'as_pumped',NULL,500.0,NULL,NULL,1,20.0,84.5,NULL,'77a4ea2b-3e93-4f69-b93c-90c17804e868','',31);
CREATE TABLE sag_reading (
	id TEXT NOT NULL, 
	measurement_id TEXT NOT NULL, 
	number INTEGER NOT NULL, 
	sag_mm REAL NOT NULL, 
	settled_from TEXT NOT NULL, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_sag_reading PRIMARY KEY (id), 
	CONSTRAINT fk_sag_reading_measurement_id FOREIGN KEY(measurement_id) REFERENCES sag_measurement (id) DEFERRABLE INITIALLY DEFERRED
)
 STRICT

;
INSERT INTO "sag_reading" VALUES('8d0259d0-509a-4459-b540-dfb4e974be85','82de1b72-9ce9-4039-82d4-422f0093d67f',1,30.5,'',17);
INSERT INTO "sag_reading" VALUES('98835b1b-1e5e-4923-b580-ea6678c77a1e','82de1b72-9ce9-4039-82d4-422f0093d67f',2,31.0,'',17);
INSERT INTO "sag_reading" VALUES('e3d51514-0d41-471a-994c-7247df29bd1c','a1e5ff27-69b9-4739-b3ff-4eefdc6fb95d',1,30.5,'',17);
INSERT INTO "sag_reading" VALUES('af3cb246-02ff-4fa2-a932-8d8beec3d61b','a1e5ff27-69b9-4739-b3ff-4eefdc6fb95d',2,31.0,'',17);
INSERT INTO "sag_reading" VALUES('e64c2df3-19b1-473e-8c90-aa02fa46e9cc','2e2130b6-d2e7-4378-a281-900183132d3b',1,17.0,'',18);
INSERT INTO "sag_reading" VALUES('b419e947-36b0-40fd-82c2-fc898edc9db0','2e2130b6-d2e7-4378-a281-900183132d3b',2,17.5,'',18);
INSERT INTO "sag_reading" VALUES('5b895a2d-ce62-4700-a6f6-266b0a34d24f','2e2130b6-d2e7-4378-a281-900183132d3b',3,17.0,'',18);
INSERT INTO "sag_reading" VALUES('824f470d-3657-40d7-b71d-6121c213f820','d9f2b97c-bd73-49ad-81ac-69e3148ace6d',1,17.0,'',18);
INSERT INTO "sag_reading" VALUES('cdca8c67-557e-406c-90b7-0c21bb452dc9','d9f2b97c-bd73-49ad-81ac-69e3148ace6d',2,17.5,'',18);
INSERT INTO "sag_reading" VALUES('6ce74894-bd82-459b-a465-84a00a99d70b','d9f2b97c-bd73-49ad-81ac-69e3148ace6d',3,17.0,'',18);
CREATE TABLE sag_target (
	id TEXT NOT NULL, 
	bike_id TEXT NOT NULL, 
	rider_id TEXT NOT NULL, 
	unit_id TEXT NOT NULL, 
	target REAL NOT NULL, 
	low REAL NOT NULL, 
	high REAL NOT NULL, 
	origin TEXT NOT NULL, 
	posture TEXT NOT NULL, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_sag_target PRIMARY KEY (id), 
	CONSTRAINT uq_sag_target_rider_id_unit_id UNIQUE (rider_id, unit_id), 
	CONSTRAINT fk_sag_target_bike_id FOREIGN KEY(bike_id) REFERENCES bike (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_sag_target_rider_id FOREIGN KEY(rider_id) REFERENCES person (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_sag_target_unit_id FOREIGN KEY(unit_id) REFERENCES unit (id) DEFERRABLE INITIALLY DEFERRED
)
 STRICT

;
INSERT INTO "sag_target" VALUES('da26f1bf-f8fa-47f2-b6e3-246d8328bf0a','524af228-d00f-4d26-88f5-6e1aa34f039f','dab31048-9483-469f-9ff3-f4e393f8dd8d','5f072154-220c-4f21-829a-aa5e3b446c7c',0.2,0.18,0.22,'common_practice','standing',17);
INSERT INTO "sag_target" VALUES('488d3c7a-ce99-4076-9d6a-a0d2bb3c1d1f','524af228-d00f-4d26-88f5-6e1aa34f039f','dab31048-9483-469f-9ff3-f4e393f8dd8d','07538be2-2ede-4623-aa87-d2af8deb6da3',2.85000000000000031086e-01,0.27,0.3,'common_practice','standing',18);
CREATE TABLE service_part (
	id TEXT NOT NULL, 
	bike_id TEXT NOT NULL, 
	part TEXT NOT NULL, 
	unit_id TEXT, 
	interval_hours REAL, 
	interval_months INTEGER, 
	last_hours REAL, 
	last_at TEXT, 
	origin TEXT NOT NULL, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_service_part PRIMARY KEY (id), 
	CONSTRAINT fk_service_part_bike_id FOREIGN KEY(bike_id) REFERENCES bike (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_service_part_unit_id FOREIGN KEY(unit_id) REFERENCES unit (id) DEFERRABLE INITIALLY DEFERRED
)
 STRICT

;
INSERT INTO "service_part" VALUES('72ab024c-b366-47ad-a1f2-be9a0f290a9b','524af228-d00f-4d26-88f5-6e1aa34f039f','lowers','5f072154-220c-4f21-829a-aa5e3b446c7c',50.0,NULL,NULL,NULL,'common_practice',25);
CREATE TABLE session (
	id TEXT NOT NULL, 
	bike_id TEXT NOT NULL, 
	rider_id TEXT NOT NULL, 
	course_id TEXT NOT NULL, 
	started_at TEXT NOT NULL, 
	surface TEXT NOT NULL, 
	temperature_c REAL, 
	start_setup_id TEXT, 
	verified_at TEXT, 
	not_verified_reason TEXT NOT NULL, 
	response TEXT NOT NULL, 
	planned_runs INTEGER, 
	is_blind INTEGER NOT NULL, 
	ended_at TEXT, 
	person_id TEXT, 
	note TEXT NOT NULL, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_session PRIMARY KEY (id), 
	CONSTRAINT ck_session_is_blind CHECK (is_blind IN (0, 1)), 
	CONSTRAINT fk_session_bike_id FOREIGN KEY(bike_id) REFERENCES bike (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_session_rider_id FOREIGN KEY(rider_id) REFERENCES person (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_session_course_id FOREIGN KEY(course_id) REFERENCES course (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_session_start_setup_id FOREIGN KEY(start_setup_id) REFERENCES setup (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_session_person_id FOREIGN KEY(person_id) REFERENCES person (id) DEFERRABLE INITIALLY DEFERRED
)
 STRICT

;
INSERT INTO "session" VALUES('7fedf9fc-3f87-40a1-bf17-e2b14cfdde1d','524af228-d00f-4d26-88f5-6e1aa34f039f','dab31048-9483-469f-9ff3-f4e393f8dd8d','28a2718d-9ace-48a3-a926-9bc8197ab608','2031-05-14T09:00:29+00:00','dry',NULL,'538659b5-c4f0-49e2-9cd6-fd72c6717edb','2031-05-14T09:00:28+00:00','','liking',NULL,0,NULL,'77a4ea2b-3e93-4f69-b93c-90c17804e868','',23);
CREATE TABLE setting (
	"key" TEXT NOT NULL, 
	value TEXT NOT NULL, 
	CONSTRAINT pk_setting PRIMARY KEY ("key")
)
 STRICT

;
INSERT INTO "setting" VALUES('person_at_the_bench','77a4ea2b-3e93-4f69-b93c-90c17804e868');
INSERT INTO "setting" VALUES('theme','dark');
CREATE TABLE setup (
	id TEXT NOT NULL, 
	bike_id TEXT NOT NULL, 
	rider_id TEXT NOT NULL, 
	number INTEGER NOT NULL, 
	origin TEXT NOT NULL, 
	made_at TEXT NOT NULL, 
	name TEXT NOT NULL, 
	parent_id TEXT, 
	is_confounded INTEGER NOT NULL, 
	temperature_c REAL, 
	person_id TEXT, 
	note TEXT NOT NULL, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_setup PRIMARY KEY (id), 
	CONSTRAINT ck_setup_is_confounded CHECK (is_confounded IN (0, 1)), 
	CONSTRAINT uq_setup_bike_id_number UNIQUE (bike_id, number), 
	CONSTRAINT fk_setup_bike_id FOREIGN KEY(bike_id) REFERENCES bike (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_setup_rider_id FOREIGN KEY(rider_id) REFERENCES person (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_setup_parent_id FOREIGN KEY(parent_id) REFERENCES setup (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_setup_person_id FOREIGN KEY(person_id) REFERENCES person (id) DEFERRABLE INITIALLY DEFERRED
)
 STRICT

;
INSERT INTO "setup" VALUES('538659b5-c4f0-49e2-9cd6-fd72c6717edb','524af228-d00f-4d26-88f5-6e1aa34f039f','dab31048-9483-469f-9ff3-f4e393f8dd8d',1,'baseline','2031-05-14T09:00:25+00:00','',NULL,0,NULL,'77a4ea2b-3e93-4f69-b93c-90c17804e868','',20);
CREATE TABLE setup_value (
	id TEXT NOT NULL, 
	setup_id TEXT NOT NULL, 
	item TEXT NOT NULL, 
	subject_id TEXT NOT NULL, 
	value REAL, 
	how TEXT NOT NULL, 
	range_id TEXT, 
	temperature_c REAL, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_setup_value PRIMARY KEY (id), 
	CONSTRAINT uq_setup_value_setup_id_item_subject_id UNIQUE (setup_id, item, subject_id), 
	CONSTRAINT fk_setup_value_setup_id FOREIGN KEY(setup_id) REFERENCES setup (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_setup_value_range_id FOREIGN KEY(range_id) REFERENCES range_count (id) DEFERRABLE INITIALLY DEFERRED
)
 STRICT

;
INSERT INTO "setup_value" VALUES('fad1fd67-3ea3-4566-a1c1-b04b0adb7202','538659b5-c4f0-49e2-9cd6-fd72c6717edb','adjuster','51f68db9-74da-48f0-959e-25a4890b692b',6.0,'set_to','f5421ab8-af2a-4c5b-94fa-0a2836e8da25',NULL,20);
INSERT INTO "setup_value" VALUES('97026043-1841-4880-bc5a-9f82b825d662','538659b5-c4f0-49e2-9cd6-fd72c6717edb','adjuster','8a9ba067-cfff-4cfa-a64b-54805d005456',7.0,'set_to','c463cfdf-b3c4-4a6e-8816-8f3b04e04b6e',NULL,20);
INSERT INTO "setup_value" VALUES('7c833ee6-a2d2-4d03-8d0b-0d9d787edecc','538659b5-c4f0-49e2-9cd6-fd72c6717edb','adjuster','b52a1cbe-d2e9-4bad-8feb-6c9ecb6ba19b',5.0,'set_to','15b00ae5-1245-42e7-8ae3-91af49d7b889',NULL,20);
INSERT INTO "setup_value" VALUES('f737bd9f-f243-4a03-9a6e-acb78e89e32d','538659b5-c4f0-49e2-9cd6-fd72c6717edb','adjuster','c234b9b7-6e50-46ab-a99d-5860a5d99dec',4.0,'set_to','e3c556c9-3587-4f38-a6af-00ea7db243b2',NULL,20);
INSERT INTO "setup_value" VALUES('e353a230-d829-4ea1-9fad-109afb4e91bd','538659b5-c4f0-49e2-9cd6-fd72c6717edb','pressure','07538be2-2ede-4623-aa87-d2af8deb6da3',1240.0,'set_to',NULL,20.0,20);
INSERT INTO "setup_value" VALUES('4a0e182c-8c9f-462d-a515-550d646746af','538659b5-c4f0-49e2-9cd6-fd72c6717edb','pressure','5f072154-220c-4f21-829a-aa5e3b446c7c',520.0,'set_to',NULL,20.0,20);
INSERT INTO "setup_value" VALUES('a8378c27-6899-437d-8094-1c2bd3209cdc','538659b5-c4f0-49e2-9cd6-fd72c6717edb','spacers','07538be2-2ede-4623-aa87-d2af8deb6da3',1.0,'set_to',NULL,NULL,20);
INSERT INTO "setup_value" VALUES('f7844437-3d54-4b82-a319-e8989f68750e','538659b5-c4f0-49e2-9cd6-fd72c6717edb','spacers','5f072154-220c-4f21-829a-aa5e3b446c7c',1.0,'set_to',NULL,NULL,20);
INSERT INTO "setup_value" VALUES('b6c693f9-ef4c-4b46-9b51-7df26e35a2cd','538659b5-c4f0-49e2-9cd6-fd72c6717edb','tyre_pressure','9325b38e-cb13-40ac-abe9-fb484d333031',160.0,'set_to',NULL,NULL,20);
INSERT INTO "setup_value" VALUES('8935ce91-7d0b-4490-8c4b-4ed931f80434','538659b5-c4f0-49e2-9cd6-fd72c6717edb','tyre_pressure','f955690c-2083-41fc-8805-16082c1af193',160.0,'set_to',NULL,NULL,20);
CREATE TABLE skip (
	id TEXT NOT NULL, 
	bike_id TEXT NOT NULL, 
	station TEXT NOT NULL, 
	reason TEXT NOT NULL, 
	at TEXT NOT NULL, 
	person_id TEXT, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_skip PRIMARY KEY (id), 
	CONSTRAINT fk_skip_bike_id FOREIGN KEY(bike_id) REFERENCES bike (id) DEFERRABLE INITIALLY DEFERRED, 
	CONSTRAINT fk_skip_person_id FOREIGN KEY(person_id) REFERENCES person (id) DEFERRABLE INITIALLY DEFERRED
)
 STRICT

;
INSERT INTO "skip" VALUES('f7051cea-a58a-4be0-ab03-093fc5c5309d','524af228-d00f-4d26-88f5-6e1aa34f039f','review','one run only','2031-05-14T09:00:34+00:00','77a4ea2b-3e93-4f69-b93c-90c17804e868',25);
CREATE TABLE "spring" (
	id TEXT NOT NULL, 
	unit_id TEXT NOT NULL, 
	rate_n_per_mm REAL NOT NULL, 
	stroke_mm REAL, 
	label TEXT NOT NULL, how TEXT, curve TEXT, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_spring PRIMARY KEY (id), 
	CONSTRAINT fk_spring_unit_id FOREIGN KEY(unit_id) REFERENCES unit (id) DEFERRABLE INITIALLY DEFERRED
)
 STRICT

;
INSERT INTO "spring" VALUES('d42272e4-09a1-4e6c-b32d-0474714d65bd','07538be2-2ede-4623-aa87-d2af8deb6da3',78.8,65.0,'spare','pressed','[[0.0, 0.0], [10.0, 800.0], [20.0, 1700.0]]',30);
INSERT INTO "spring" VALUES('d3e529a8-12ba-41e3-8c6a-e629d95c6ec5','00e69ff0-af45-4ac1-a5ad-c1138a7fc66e',78.8,65.0,'spare','pressed','[[0.0, 0.0], [10.0, 800.0], [20.0, 1700.0]]',38);
CREATE TABLE tyre (
	id TEXT NOT NULL, 
	bike_id TEXT NOT NULL, 
	"end" TEXT NOT NULL, 
	name TEXT NOT NULL, 
	width_mm REAL, 
	is_tubeless INTEGER NOT NULL, 
	has_insert INTEGER NOT NULL, 
	minimum_kpa REAL, 
	maximum_kpa REAL, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_tyre PRIMARY KEY (id), 
	CONSTRAINT ck_tyre_is_tubeless CHECK (is_tubeless IN (0, 1)), 
	CONSTRAINT ck_tyre_has_insert CHECK (has_insert IN (0, 1)), 
	CONSTRAINT ck_tyre_end CHECK ("end" IN ('front', 'rear')), 
	CONSTRAINT fk_tyre_bike_id FOREIGN KEY(bike_id) REFERENCES bike (id) DEFERRABLE INITIALLY DEFERRED
)
 STRICT

;
INSERT INTO "tyre" VALUES('f955690c-2083-41fc-8805-16082c1af193','524af228-d00f-4d26-88f5-6e1aa34f039f','front','',NULL,1,0,NULL,NULL,2);
INSERT INTO "tyre" VALUES('9325b38e-cb13-40ac-abe9-fb484d333031','524af228-d00f-4d26-88f5-6e1aa34f039f','rear','',NULL,1,0,NULL,NULL,2);
INSERT INTO "tyre" VALUES('c60a2b8d-dbab-4163-a5be-980c8c68fa15','05c924d3-f7b7-4656-8065-36368bff3102','front','',NULL,1,0,NULL,NULL,38);
INSERT INTO "tyre" VALUES('0a8e630d-910a-4972-91b1-8126f644b0fc','05c924d3-f7b7-4656-8065-36368bff3102','rear','',NULL,1,0,NULL,NULL,38);
CREATE TABLE "unit" (
	id TEXT NOT NULL, 
	bike_id TEXT NOT NULL, 
	"end" TEXT NOT NULL, 
	kind TEXT NOT NULL, 
	name TEXT NOT NULL, 
	spring TEXT NOT NULL, 
	travel_mm REAL, 
	minimum_kpa REAL, 
	maximum_kpa REAL, 
	negative TEXT NOT NULL, 
	has_second_positive INTEGER NOT NULL, 
	second_minimum_kpa REAL, 
	second_maximum_kpa REAL, fill_order TEXT, 
	spacer_volume_mm3 REAL, 
	spacer_limit INTEGER, 
	area_mm2 REAL, 
	positive_mm3 REAL, 
	negative_mm3 REAL, 
	spring_stroke_mm REAL, 
	preload_limit_mm REAL, 
	preload_pitch_mm REAL, 
	maker_sag_low REAL, 
	maker_sag_high REAL, 
	maker_posture TEXT NOT NULL, 
	maker_table TEXT NOT NULL, 
	is_dual_crown INTEGER NOT NULL, 
	is_inverted INTEGER NOT NULL, 
	damper_in_one_leg INTEGER NOT NULL, 
	exposed_nominal_mm REAL, eye_to_eye_mm REAL, mounting TEXT, 
	serial TEXT NOT NULL, 
	note TEXT NOT NULL, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_unit PRIMARY KEY (id), 
	CONSTRAINT ck_unit_has_second_positive CHECK (has_second_positive IN (0, 1)), 
	CONSTRAINT ck_unit_is_dual_crown CHECK (is_dual_crown IN (0, 1)), 
	CONSTRAINT ck_unit_is_inverted CHECK (is_inverted IN (0, 1)), 
	CONSTRAINT ck_unit_damper_in_one_leg CHECK (damper_in_one_leg IN (0, 1)), 
	CONSTRAINT ck_unit_end CHECK ("end" IN ('front', 'rear')), 
	CONSTRAINT ck_unit_kind CHECK (kind IN ('fork', 'shock')), 
	CONSTRAINT fk_unit_bike_id FOREIGN KEY(bike_id) REFERENCES bike (id) DEFERRABLE INITIALLY DEFERRED
)
 STRICT

;
INSERT INTO "unit" VALUES('07538be2-2ede-4623-aa87-d2af8deb6da3','524af228-d00f-4d26-88f5-6e1aa34f039f','rear','shock','','air',60.0,NULL,NULL,'self',0,NULL,NULL,NULL,NULL,NULL,1450.0,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'','',0,0,0,NULL,205.0,'rear hole','','',28);
INSERT INTO "unit" VALUES('5f072154-220c-4f21-829a-aa5e3b446c7c','524af228-d00f-4d26-88f5-6e1aa34f039f','front','fork','','air',150.0,NULL,NULL,'self',0,NULL,NULL,'second_first',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'','',0,0,0,NULL,NULL,NULL,'','',29);
INSERT INTO "unit" VALUES('2261a01d-190f-46b7-b9fd-61c596fe8893','05c924d3-f7b7-4656-8065-36368bff3102','front','fork','','air',150.0,NULL,NULL,'self',0,NULL,NULL,'second_first',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'','',0,0,0,NULL,NULL,NULL,'','',38);
INSERT INTO "unit" VALUES('00e69ff0-af45-4ac1-a5ad-c1138a7fc66e','05c924d3-f7b7-4656-8065-36368bff3102','rear','shock','','air',60.0,NULL,NULL,'self',0,NULL,NULL,NULL,NULL,NULL,1450.0,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'','',0,0,0,NULL,205.0,'rear hole','','',38);
CREATE TABLE valve (
	id TEXT NOT NULL, 
	unit_id TEXT NOT NULL, 
	purpose TEXT NOT NULL, 
	place TEXT NOT NULL, 
	minimum_kpa REAL, 
	maximum_kpa REAL, 
	version INTEGER NOT NULL, 
	CONSTRAINT pk_valve PRIMARY KEY (id), 
	CONSTRAINT fk_valve_unit_id FOREIGN KEY(unit_id) REFERENCES unit (id) DEFERRABLE INITIALLY DEFERRED
)
 STRICT

;
INSERT INTO "valve" VALUES('61c2b0f6-0d8f-45e5-a5fe-53e51fa4fc2d','07538be2-2ede-4623-aa87-d2af8deb6da3','negative','below the can',300.0,1900.0,25);
INSERT INTO "valve" VALUES('34e34c2c-830c-4278-a581-ac2caa75cfb3','00e69ff0-af45-4ac1-a5ad-c1138a7fc66e','negative','below the can',300.0,1900.0,38);
CREATE INDEX ix_deed_stamp ON deed (stamp);
CREATE INDEX ix_deed_state_number ON deed (state, number);
CREATE UNIQUE INDEX uq_draft_open ON draft (kind, coalesce(bike_id, ''), coalesce(subject, '')) WHERE closed_by IS NULL;
CREATE INDEX ix_bike_rider_bike_id ON bike_rider (bike_id);
CREATE INDEX ix_bike_rider_person_id ON bike_rider (person_id);
CREATE INDEX ix_tyre_bike_id ON tyre (bike_id);
CREATE INDEX ix_photo_bike_id ON photo (bike_id);
CREATE INDEX ix_skip_person_id ON skip (person_id);
CREATE INDEX ix_skip_bike_id ON skip (bike_id);
CREATE INDEX ix_setup_bike_id ON setup (bike_id);
CREATE INDEX ix_setup_parent_id ON setup (parent_id);
CREATE INDEX ix_setup_person_id ON setup (person_id);
CREATE INDEX ix_setup_rider_id ON setup (rider_id);
CREATE INDEX ix_riding_hours_bike_id ON riding_hours (bike_id);
CREATE INDEX ix_generation_unit_id ON generation (unit_id);
CREATE INDEX ix_valve_unit_id ON valve (unit_id);
CREATE INDEX ix_leverage_survey_bike_id ON leverage_survey (bike_id);
CREATE INDEX ix_leverage_survey_unit_id ON leverage_survey (unit_id);
CREATE INDEX ix_sag_target_bike_id ON sag_target (bike_id);
CREATE INDEX ix_sag_target_unit_id ON sag_target (unit_id);
CREATE INDEX ix_sag_target_rider_id ON sag_target (rider_id);
CREATE INDEX ix_session_start_setup_id ON session (start_setup_id);
CREATE INDEX ix_session_bike_id ON session (bike_id);
CREATE INDEX ix_session_course_id ON session (course_id);
CREATE INDEX ix_session_rider_id ON session (rider_id);
CREATE INDEX ix_session_person_id ON session (person_id);
CREATE INDEX ix_service_part_bike_id ON service_part (bike_id);
CREATE INDEX ix_service_part_unit_id ON service_part (unit_id);
CREATE INDEX ix_card_issue_person_id ON card_issue (person_id);
CREATE INDEX ix_card_issue_bike_id ON card_issue (bike_id);
CREATE INDEX ix_card_issue_setup_id ON card_issue (setup_id);
CREATE INDEX ix_card_issue_rider_id ON card_issue (rider_id);
CREATE INDEX ix_leverage_point_survey_id ON leverage_point (survey_id);
CREATE INDEX ix_run_session_id ON run (session_id);
CREATE INDEX ix_run_direction_of ON run (direction_of);
CREATE INDEX ix_run_setup_id ON run (setup_id);
CREATE INDEX ix_run_person_id ON run (person_id);
CREATE INDEX ix_overrule_adjuster_id ON overrule (adjuster_id);
CREATE INDEX ix_overrule_session_id ON overrule (session_id);
CREATE INDEX ix_blind_plan_session_id ON blind_plan (session_id);
CREATE INDEX ix_on_bike_bike_id ON on_bike (bike_id);
CREATE INDEX ix_on_bike_person_id ON on_bike (person_id);
CREATE INDEX ix_on_bike_range_id ON on_bike (range_id);
CREATE INDEX ix_on_bike_pump_id ON on_bike (pump_id);
CREATE INDEX ix_setup_value_setup_id ON setup_value (setup_id);
CREATE INDEX ix_setup_value_range_id ON setup_value (range_id);
CREATE INDEX ix_sag_reading_measurement_id ON sag_reading (measurement_id);
CREATE INDEX ix_run_rating_run_id ON run_rating (run_id);
CREATE INDEX ix_run_symptom_run_id ON run_symptom (run_id);
CREATE INDEX ix_unit_bike_id ON unit (bike_id);
CREATE INDEX ix_sag_measurement_generation_id ON sag_measurement (generation_id);
CREATE INDEX ix_sag_measurement_bike_id ON sag_measurement (bike_id);
CREATE INDEX ix_sag_measurement_unit_id ON sag_measurement (unit_id);
CREATE INDEX ix_sag_measurement_rider_id ON sag_measurement (rider_id);
CREATE INDEX ix_sag_measurement_pump_id ON sag_measurement (pump_id);
CREATE INDEX ix_sag_measurement_person_id ON sag_measurement (person_id);
CREATE INDEX ix_spring_unit_id ON spring (unit_id);
CREATE INDEX ix_check_in_person_id ON check_in (person_id);
CREATE INDEX ix_check_in_bike_id ON check_in (bike_id);
CREATE INDEX ix_check_item_checkin_id ON check_item (checkin_id);
CREATE INDEX ix_check_item_photo_id ON check_item (photo_id);
CREATE INDEX ix_adjuster_unit_id ON adjuster (unit_id);
CREATE INDEX ix_adjuster_depends_on ON adjuster (depends_on);
CREATE INDEX ix_range_count_generation_id ON range_count (generation_id);
CREATE INDEX ix_range_count_adjuster_id ON range_count (adjuster_id);
CREATE INDEX ix_range_count_person_id ON range_count (person_id);
CREATE INDEX ix_deed_bike_id ON deed (bike_id);
CREATE INDEX ix_deed_person_id ON deed (person_id);
COMMIT;
