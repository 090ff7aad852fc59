import { Fields } from '../form/Fields.tsx';
import { FindFields } from '../form/FindFields.tsx';
import { TRIP } from '../form/form-context.ts';
import { t } from '../language/t.ts';
import { FilePart } from './FilePart.tsx';
import { TRIP_ITEMS } from './trip-items.ts';

/** What is told of this journey alone. */
export const TripPanel = () => (
  <FilePart kind="trip" title={t('Trip')}>
    {() => (
      <FindFields label={t('Find a field of the trip')} items={TRIP_ITEMS}>
        <Fields items={TRIP_ITEMS} at={TRIP} />
      </FindFields>
    )}
  </FilePart>
);
