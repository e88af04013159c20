import { Controller, Post, Req } from '@nestjs/common';
import { ApiCreatedResponse, ApiOperation, ApiTags } from '@nestjs/swagger';
import { May, type Actor } from '../platform/actor.js';
import { Acting, type HouseRequest } from '../platform/web/request.js';
import { QueueProofs, type IssuedProof } from './queue-proofs.js';

const example: IssuedProof = {
  token: 'q0m3…43 characters, shown once',
  personId: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a10',
  deviceId: '0195862e-7d3f-7a4b-9c55-0d0f6f1b7a77',
  issuedAt: '2026-03-12T06:00:00.000Z',
  endsAt: '2026-03-26T06:00:00.000Z',
};

@ApiTags('devices')
@Controller('api/queue-proofs')
export class QueueProofApi {
  constructor(private readonly proofs: QueueProofs) {}

  @Post()
  @May('read')
  @ApiOperation({ summary: 'A proof for what the person enters on this shared device while the network is away' })
  @ApiCreatedResponse({ schema: { example } })
  issue(@Acting() actor: Actor, @Req() request: HouseRequest): Promise<IssuedProof> {
    return this.proofs.issue(actor, request.sessionHash);
  }
}
