/** What a reader chose of each kind of unit. Inside everything is metric. */
export interface Units {
  readonly distance: 'km' | 'mi';
  readonly volume: 'L' | 'US gal' | 'imp gal';
  readonly mass: 'kg' | 'lb';
  readonly temperature: '°C' | '°F';
  readonly length: 'm' | 'ft';
  readonly pressure: 'kPa' | 'psi';
}
