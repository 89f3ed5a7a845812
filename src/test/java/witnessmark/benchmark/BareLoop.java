package witnessmark.benchmark;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.MqttMessage;

/**
 * The least that could do the same: the same client library and database, the same commit groups,
 * acknowledgement after the commit; no decision, no log format, no tree, no repeats told.
 */
final class BareLoop implements Subject {
  static final String CLIENT = "bare-loop";
  private static final int GROUP = 256;

  private final Client client;
  private final boolean answering;
  private final Table table;
  private final BlockingQueue<MqttMessage> queue = new LinkedBlockingQueue<>();
  private final Thread writer = new Thread(this::run, "bare-writer");
  private volatile long durable;
  private volatile boolean stopping;

  /**
   * @param answering whether it publishes the reading's own bytes once they are on disk
   */
  BareLoop(Path directory, String url, boolean answering) {
    this.answering = answering;
    table = new Table(directory.resolve("bare.db"));
    client = new Client(url, CLIENT);
    client.manualAcks();
    client.onMessage(queue::add);
  }

  @Override
  public String answers() {
    return "bare/answer";
  }

  @Override
  public void start() {
    writer.start();
    client.connect();
    client.subscribe(Client.TORQUE);
  }

  @Override
  public long durable() {
    return durable;
  }

  private void run() {
    List<MqttMessage> group = new ArrayList<>();
    try {
      while (!stopping) {
        group.clear();
        MqttMessage first = queue.poll(200, TimeUnit.MILLISECONDS);
        if (first != null) {
          group.add(first);
          queue.drainTo(group, GROUP - 1);
          record(group);
        }
      }
    } catch (InterruptedException | MqttException e) {
      throw new IllegalStateException(e);
    }
  }

  private void record(List<MqttMessage> group) throws MqttException {
    table.commit(group.stream().map(MqttMessage::getPayload).toList());
    for (MqttMessage message : group) {
      if (answering) {
        client.publish(answers(), message.getPayload());
      }
      client.acknowledge(message);
    }
    durable += group.size();
  }

  @Override
  public void close() {
    stopping = true;
    try {
      writer.join();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    client.close();
    table.close();
  }
}
