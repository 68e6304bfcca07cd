select t.trial_code as TrialCode, t.title as Title, t.season as Season, t.time_zone as TimeZone,
       min(l.opens_on) as FirstOpensOn, max(l.closes_on) as LastClosesOn
from trial t
join pull l on l.trial_code = t.trial_code
group by t.trial_code, t.title, t.season, t.time_zone
order by 6 desc, 1
