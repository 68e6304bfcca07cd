using LabPipeline.Contracts.V1;
using LabPipeline.Hosting;
using LabPipeline.Hosting.Bus;
using LabPipeline.Hosting.Health;
using LabPipeline.Quality.Evaluation;
using LabPipeline.Quality.Rules;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Options;

namespace LabPipeline.Quality;

/// <summary>The quality service: results, rules, pull watch.</summary>
public sealed class QualityModule : ILabModule
{
    public string Name => "quality";

    public void AddServices(IHostApplicationBuilder builder)
    {
        builder.Services.AddOptions<RuleLimits>().Bind(builder.Configuration.GetSection(RuleLimits.Section)).ValidateOnStart();
        builder.Services.AddSingleton<IValidateOptions<RuleLimits>, RuleLimitsValidator>();
        builder.Services.AddSingleton(services => services.GetRequiredService<IOptions<RuleLimits>>().Value);
        builder.Services.AddSingleton<RuleSet>();
        builder.Services.AddSingleton<QualityEvaluation>();
        builder.Services.AddSingleton<PullWatch>();
        builder.Services.AddHostedService(services => services.GetRequiredService<PullWatch>());
        builder.Services.AddServicePulse(Name);
    }

    public void AddConsumers(IServiceCollection services)
    {
        services.AddOnceConsumer<ReadingsRecordedConsumer, ReadingsRecorded>(ReadingsRecordedConsumer.Endpoint);
        services.AddOnceConsumer<ReadingsChangedConsumer, ReadingsChanged>(ReadingsChangedConsumer.Endpoint);
        services.AddOnceConsumer<TrialPlanLoadedConsumer, TrialPlanLoaded>(TrialPlanLoadedConsumer.Endpoint);
        services.AddOnceConsumer<FileRefusedConsumer, FileRefused>(FileRefusedConsumer.Endpoint);
    }
}
