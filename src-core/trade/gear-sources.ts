import type { Source, Trust } from './source.ts';

const source = (key: string, trust: Trust, title: string): Source => ({ key, title, trust });

// Bends
export const bendOverPin = source('rope-maker-static-bend', 'read', 'rope maker\'s published usage notes: standing still round a pin or a bollard the bend is 3 times the rope\'s diameter, 2 times for certain ropes; over a sheave 5 to 20 times by type');
export const bendOverPinHmpe = source('marine-rope-catalogue-hmpe-pin', 'read', 'marine rope maker\'s catalogue, finishings for lines, p. 20: in an HMPE eye the pin is more than 2 times the rope\'s diameter');
export const bendRatioSlides = source('slings-bend-ratio-slides', 'read', 'training slides "Slings & D/d Ratio" (2011): 6 in over a sling of 1 in is a ratio of 6; a wire rope sling keeps 80 % there, 84 % at 8, 86 % at 10, 88 % at 15, 92 % at 20');
export const bendRatioArticle = source('bend-ratio-article', 'read', 'rigging article "What is D/d ratio and why is this critical for lifting slings?": 12 in over 3/8 in is 32, 10 in over 1/2 in is 20');

// Shackles
export const oneSizeLarger = source('wac-296-54-54730-6', 'read', 'WAC 296-54-54730(6), shackles are one size larger than the lines they connect');
export const markedOrNotUsed = source('wac-296-304-07005-1', 'read', 'WAC 296-304-07005(1), a shackle without legible marks of its safe working load is not used, and is not loaded above it');
export const originalParts = source('wac-296-155-33900-2', 'read', 'WAC 296-155-33900(2)(c), replacement parts meet the maker\'s specification of the original');
export const sideLoadQuestion = source('rigger-examination-side-load', 'read', 'rigger examination question: a screw pin shackle of 3.25 t, side-loaded at 90°, is good for 1.625 t');
export const hardwareRemoved = source('wac-296-155-33900-1', 'read', 'WAC 296-155-33900(1)(b), table 19: hardware that is bent, cracked, worn by a tenth, pitted or marked by heat is removed from service');
export const hookRemoved = source('alberta-ohs-309', 'read', 'Alberta OHS Code 2009, s. 309: a hook that is cracked, twisted by more than 10° or worn by a tenth is removed from service');
export const over90 = source('wac-296-155-33905-4', 'read', 'WAC 296-155-33905(4), figure 17: over 90° not permitted unless the maker or a qualified person authorises it');

// Slings
export const slingMarked = source('wac-296-24-29419-13', 'read', 'WAC 296-24-29419(13), a sling without legible marks is not used');
export const slingKnotted = source('wac-296-24-29419-2', 'read', 'WAC 296-24-29419(2), a sling is not shortened with knots');

// Our own careful choices
export const angleNotWritten = source('own-angle-nothing', 'own', 'the angle at the block is not written, so both parts are taken to pull the same way');
export const widestBridle = source('widest-bridle', 'secondary', 'maker\'s catalogue reproducing ASME practice: over 120° between two slings on a bow is not allowed');
export const knotNotWritten = source('own-softer-knot', 'own', 'the knot of the soft shackle is not written, so the weakest one that was tested is taken');
export const breaksAsItsLimit = source('own-breaks-as-its-limit', 'own', 'gear that is loaded from the side or as a choker breaks at the same share of its breaking strength as its limit is lowered to, because no source gives its breaking strength apart');
