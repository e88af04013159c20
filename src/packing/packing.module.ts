import { Module } from '@nestjs/common';
import { CountPacks } from './count-packs.js';
import './packing.sentences.js';

@Module({ providers: [CountPacks], exports: [CountPacks] })
export class PackingModule {}
