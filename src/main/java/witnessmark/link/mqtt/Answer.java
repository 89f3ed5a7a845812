package witnessmark.link.mqtt;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.eclipse.paho.client.mqttv3.IMqttActionListener;
import org.eclipse.paho.client.mqttv3.IMqttToken;
import org.eclipse.paho.client.mqttv3.MqttException;

/**
 * The broker's answer to one request, waited for in slices. The library's own token cannot: once a
 * wait on it has timed out, it counts as failed.
 */
final class Answer implements IMqttActionListener {
  private final CountDownLatch answered = new CountDownLatch(1);
  private volatile IMqttToken token;
  private volatile Throwable failure;

  @Override
  public void onSuccess(IMqttToken answer) {
    token = answer;
    answered.countDown();
  }

  @Override
  public void onFailure(IMqttToken answer, Throwable why) {
    failure = why;
    answered.countDown();
  }

  /**
   * Waits until the broker says yes; false when given up, or nothing came within the limit.
   *
   * @throws MqttException when it says no
   */
  boolean within(Duration limit, BooleanSupplier givenUp) throws MqttException {
    try {
      return await(limit, givenUp) != null;
    } catch (MqttException e) {
      if (e.getReasonCode() == MqttException.REASON_CODE_CLIENT_TIMEOUT) {
        return false;
      }
      throw e;
    }
  }

  /**
   * Waits until the broker says yes and returns the answer, or null when given up.
   *
   * @throws MqttException when it says no, or nothing within the limit
   */
  IMqttToken await(Duration limit, BooleanSupplier givenUp) throws MqttException {
    long deadline = System.nanoTime() + limit.toNanos();
    try {
      while (!answered.await(50, TimeUnit.MILLISECONDS)) {
        if (givenUp.getAsBoolean()) {
          return null;
        }
        if (System.nanoTime() > deadline) {
          throw new MqttException(MqttException.REASON_CODE_CLIENT_TIMEOUT);
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return null;
    }
    if (failure instanceof MqttException refused) {
      throw refused;
    }
    if (failure != null) {
      throw new MqttException(failure);
    }
    return token;
  }
}
