/**
 * Stands in the built program for codec-parser (LGPL), which the packages of the FLAC and Vorbis decoders bring along
 * to take files apart; here that is done before packets come to them.
 */
export default class UnusedParser {
  parseChunk(): never {
    throw new Error('Files are not taken apart here.');
  }
}

export const data = 'data';
export const totalSamples = 'totalSamples';
export const codecFrames = 'codecFrames';
export const header = 'header';
export const vorbisComments = 'vorbisComments';
export const vorbisSetup = 'vorbisSetup';
export const isLastPage = 'isLastPage';
