namespace BoothWatch.Service.Outputs.Alerts;

/// <summary>A way for messages to leave. It throws on failure; the dispatcher alone catches, counts and backs off.</summary>
public interface IAlertChannel
{
    /// <summary>Name in the configuration and on the page, for example <c>email</c>.</summary>
    string Name { get; }

    /// <summary>Why it is off, and how to switch it on; null while it is on.</summary>
    string? OffBecause { get; }

    /// <summary>Whom a message goes to; each has its own place in the queue, so that one that is dead delays no other.</summary>
    IReadOnlyList<string> Targets();

    /// <summary>Hands a message over to what carries it further.</summary>
    /// <param name="target">One of <see cref="Targets"/>, as it was when the message was written.</param>
    /// <param name="message">The message.</param>
    /// <param name="cancellationToken">Gives up.</param>
    /// <exception cref="AlertDeliveryException">It was not taken.</exception>
    Task SendAsync(string target, AlertMessage message, CancellationToken cancellationToken);
}
