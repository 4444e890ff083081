import { eased } from '../../eased.ts';
import { late } from '../../late.ts';
import { notchNames } from '../../notch-names.ts';

late.eased = eased;
late.notchNames = notchNames;
