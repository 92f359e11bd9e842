// The settings of the two kinds of house, and of houses with one thing changed.
import { resolveSettings, type SettingOverrides } from '../../../planner/model/settings.ts';

export const HOME = resolveSettings('home', {});
export const NANO = resolveSettings('nano', {});
export const home = (own: SettingOverrides) => resolveSettings('home', own);
