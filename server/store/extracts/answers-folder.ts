import { join } from 'node:path';

/** Where in a data folder answers of an Overpass server lie. */
export const answersFolder = (folder: string): string => join(folder, 'overpass');
