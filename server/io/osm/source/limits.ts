const KIBIBYTE = 1024;
const MEBIBYTE = 1024 * KIBIBYTE;
const GIBIBYTE = 1024 * MEBIBYTE;

/** Bytes looked at to tell what a file is: enough for a long comment or licence text before the root element. Ours. */
export const SNIFF_BYTES = 64 * KIBIBYTE;

/** Bytes asked of the file system at a time. Ours: larger pieces gained nothing. */
export const READ_CHUNK_BYTES = 256 * KIBIBYTE;

/** A packed file may be packed once more (an archive of an archive by mistake); more layers are a trick. Ours. */
export const PACKING_LAYERS_MAX = 2;

/** Bytes that a packed file may expand to: a large country as .osm XML is some 10 GiB. Ours. */
export const EXPANDED_BYTES_MAX = 16 * GIBIBYTE;

/**
 * A packed map expands 10 to 25 times (980 KB to 13 MB for the smallest real one tried); 200 times is a bomb. Judged
 * only beyond the first bytes, where a small file of much alike may exceed it honestly. Ours.
 */
export const EXPANSION_RATIO_MAX = 200;
export const EXPANSION_JUDGED_FROM_BYTES = 16 * MEBIBYTE;

/**
 * Blobs of real .osm.pbf files open to 2 to 10 times their size; 100 times is a bomb, though zlib may pack a thousand times.
 * Judged only beyond the first bytes, as above. Ours.
 */
export const BLOB_RATIO_MAX = 100;
export const BLOB_RATIO_JUDGED_FROM_BYTES = MEBIBYTE;

/** OpenStreetMap allows a way 2,000 nodes, a relation 32,000 members, an object 5,000 tags (wiki, "API v0.6", capabilities). Ours. */
export const PBF_LIST_MAX = 100_000;

/** Writers put one to five groups into a block. Ours. */
export const PBF_GROUPS_MAX = 10_000;

/** Supplies in one block, of the 8,000 objects that writers put there. Ours. */
export const PBF_WANTED_MAX = 100_000;

/** GeoJSON nests 6 to 9 deep, Overpass JSON 5. Ours. */
export const JSON_DEPTH_MAX = 100;

/** Lists and objects in JSON, each position among them: a country's answer of Overpass has some hundred thousand. Ours. */
export const JSON_PARTS_MAX = 2_000_000;

/** Relations within relations: two are usual (wiki, "Relation:superroute"). What lies deeper is taken to be near. Ours. */
export const RELATION_DEPTH_MAX = 5;

/**
 * JSON is parsed in one piece, which takes about ten times its size in memory, and no JavaScript string holds more
 * than 512 MiB. Ours.
 */
export const JSON_BYTES_MAX = 256 * MEBIBYTE;

/**
 * Passes over an XML file: wanted objects; their members; the members' nodes; and two more for relations within
 * relations. Ours.
 */
export const PASSES_MAX = 5;

/** Ground ways kept for the map: more than a screen shows, and about 20 MB. The lowest ranks go first. Ours. */
export const GROUND_WAYS_MAX = 20_000;

/** Members of a relation that lie further apart than this have no one place to stand for them all. Ours. */
export const SITE_SPREAD_MAX_M = 2_000;
