namespace BoothWatch.Service.Checks;

/// <summary>A step that does not fit the check; nothing was changed.</summary>
/// <param name="message">Why, and what to do instead.</param>
internal sealed class CheckRefusedException(string message) : Exception(message);
