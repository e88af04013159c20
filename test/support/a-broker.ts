import { once } from 'node:events';
import { createServer, type AddressInfo, type Server, type Socket } from 'node:net';
import { createServer as createTlsServer } from 'node:tls';
import { Aedes } from 'aedes';
import { connectAsync, type MqttClient } from 'mqtt';
import type { TestCertificate } from './a-certificate.js';

/** A broker on a port of its own, that holds sessions in memory for as long as it runs. */
export interface TestBroker {
  readonly url: string;
  readonly port: number;
  readonly broker: Aedes;
  /** Cuts the connection of a client, as a network does. */
  cut(clientId: string): void;
  /** Closes the port and all connections, and keeps the sessions. */
  goAway(): Promise<void>;
  comeBack(): Promise<void>;
  /** A client that publishes and listens, as a weigher does. */
  aSender(): Promise<MqttClient>;
  close(): Promise<void>;
}

/** @param tls a server's certificate and what signed it: then the broker speaks TLS alone */
export async function aBroker(tls?: TestCertificate & { readonly authority: string }): Promise<TestBroker> {
  const broker = await Aedes.createBroker();
  const sockets = new Set<Socket>();
  const senders: MqttClient[] = [];
  const listen = async (port: number): Promise<Server> => {
    const handle = (socket: Socket): void => {
      sockets.add(socket);
      socket.on('close', () => sockets.delete(socket));
      broker.handle(socket);
    };
    const server =
      tls === undefined ? createServer(handle) : createTlsServer({ cert: tls.certificate, key: tls.key }, handle);
    server.listen(port, '127.0.0.1');
    await once(server, 'listening');
    return server;
  };
  let server = await listen(0);
  const { port } = server.address() as AddressInfo;
  const goAway = async (): Promise<void> => {
    const closed = once(server, 'close');
    server.close();
    for (const socket of sockets) socket.destroy();
    await closed;
  };
  const url = `${tls === undefined ? 'mqtt' : 'mqtts'}://127.0.0.1:${port}`;
  return {
    url,
    port,
    broker,
    cut: (clientId) => {
      const clients = (broker as unknown as { clients: Record<string, { conn: Socket } | undefined> }).clients;
      clients[clientId]?.conn.destroy();
    },
    goAway,
    comeBack: async () => {
      server = await listen(port);
    },
    aSender: async () => {
      const sender = await connectAsync(url, {
        protocolVersion: 4,
        ...(tls === undefined ? {} : { ca: tls.authority }),
      });
      senders.push(sender);
      return sender;
    },
    close: async () => {
      for (const sender of senders) await sender.endAsync(true);
      await goAway();
      await new Promise<void>((resolve) => {
        broker.close(() => {
          resolve();
        });
      });
    },
  };
}
