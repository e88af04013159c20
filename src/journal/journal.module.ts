import { Global, Module } from '@nestjs/common';
import { RecordChange } from './record-change.js';

@Global()
@Module({ providers: [RecordChange], exports: [RecordChange] })
export class JournalModule {}
