using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Records;

/// <summary>Checks the <c>record</c> section.</summary>
internal sealed class RecordOptionsValidator : IValidateOptions<RecordOptions>
{
    public ValidateOptionsResult Validate(string? name, RecordOptions options) => RecordPaper.Find(options.Paper) is null
        ? ValidateOptionsResult.Fail($"{RecordOptions.Section}:paper is \"{options.Paper}\"; give {RecordPaper.A4} or {RecordPaper.Letter}, for example {RecordPaper.A4}")
        : ValidateOptionsResult.Success;
}
