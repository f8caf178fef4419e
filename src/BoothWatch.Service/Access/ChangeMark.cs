namespace BoothWatch.Service.Access;

/// <summary>On an endpoint that changes something.</summary>
/// <param name="JsonOnly">It takes <c>application/json</c> and nothing else.</param>
internal sealed record ChangeMark(bool JsonOnly);
