using System.Globalization;
using Microsoft.Extensions.Options;

namespace BoothWatch.Service.Access;

/// <summary>Checks the <c>access</c> section as a whole and names every mistake with its fix.</summary>
public sealed class AccessOptionsValidator : IValidateOptions<AccessOptions>
{
    /// <inheritdoc/>
    public ValidateOptionsResult Validate(string? name, AccessOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        List<string> errors = [];
        for (int i = 0; i < options.Hosts.Length; i++)
        {
            if (Uri.CheckHostName(options.Hosts[i]) != UriHostNameType.Dns)
            {
                errors.Add($"access:hosts:{i} is \"{options.Hosts[i]}\"; give a name without scheme and port, for example booth.example");
            }
        }

        for (int i = 0; i < options.Proxies.Length; i++)
        {
            if (Callers.Network(options.Proxies[i]) is not { } network)
            {
                errors.Add($"access:proxies:{i} is \"{options.Proxies[i]}\"; give an address or a network, for example 192.0.2.10 or 192.0.2.0/28");
            }
            else if (network.PrefixLength == 0)
            {
                errors.Add($"access:proxies:{i} is \"{options.Proxies[i]}\", which is everybody; give the address of the proxy, for example 192.0.2.10");
            }
        }

        if (!(options.SessionIdleH is >= 0.25 and <= 720))
        {
            errors.Add(string.Create(CultureInfo.InvariantCulture, $"access:sessionIdleH is {options.SessionIdleH}; give hours from 0.25 to 720, for example 72"));
        }

        if (!(options.SessionLongestDays is >= 1 and <= 366))
        {
            errors.Add(string.Create(CultureInfo.InvariantCulture, $"access:sessionLongestDays is {options.SessionLongestDays}; give days from 1 to 366, for example 90"));
        }

        return errors.Count == 0 ? ValidateOptionsResult.Success : ValidateOptionsResult.Fail(errors);
    }
}
