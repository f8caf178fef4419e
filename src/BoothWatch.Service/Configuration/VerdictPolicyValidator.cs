using BoothWatch.Verdicts;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Configuration;

/// <summary>Checks the <c>verdict</c> section with the policy's own check.</summary>
internal sealed class VerdictPolicyValidator : IValidateOptions<VerdictPolicy>
{
    public ValidateOptionsResult Validate(string? name, VerdictPolicy options)
    {
        IReadOnlyList<string> errors = PolicyCheck.Errors(options);
        return errors.Count == 0 ? ValidateOptionsResult.Success : ValidateOptionsResult.Fail(errors);
    }
}
